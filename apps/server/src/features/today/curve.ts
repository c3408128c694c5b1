import type { TodayAnswer } from '@seatwell/contract';
import { dayOf } from '@seatwell/workflow';
import { daysAfter, daysBetween } from '../reading/days.ts';
import type { Reading } from '../reading/reading.ts';

type Point = TodayAnswer['curve']['plan'][number];

const LONGEST_DAYS = 400;

/** Sums up what each day adds; what lies before the first day counts on it. */
export function cumulative(days: readonly string[], added: ReadonlyMap<string, number>): Point[] {
  const first = days[0];
  let count = first ? [...added].reduce((sum, [day, more]) => (day < first ? sum + more : sum), 0) : 0;
  return days.map((day) => {
    count += added.get(day) ?? 0;
    return { day, count };
  });
}

/** Joints planned to be tight, and tight, at the end of each day of the shutdown. */
export async function planAndActual({ db, siteId, shutdownId, shutdown, now }: Reading): Promise<TodayAnswer['curve']> {
  const [planned, tight] = await Promise.all([
    db.query<{ day: string | null; count: number }>({
      name: 'curve-plan',
      text: `SELECT planned_on AS day, count(*) AS count FROM joint
        WHERE site_id = $1 AND shutdown_id = $2 AND voided IS NULL AND make_count > 0 GROUP BY planned_on`,
      values: [siteId, shutdownId],
    }),
    db.query<{ day: string; count: number }>({
      name: 'curve-actual',
      text: `SELECT (m.tight_at AT TIME ZONE $3)::date AS day, count(*) AS count FROM make m
        JOIN joint j ON j.site_id = m.site_id AND j.shutdown_id = m.shutdown_id AND j.joint_id = m.joint_id AND j.voided IS NULL
        WHERE m.site_id = $1 AND m.shutdown_id = $2 AND m.current AND m.tight_at IS NOT NULL GROUP BY 1`,
      values: [siteId, shutdownId, shutdown.timeZone],
    }),
  ]);
  const today = dayOf(now, shutdown.timeZone);
  const length = Math.min(LONGEST_DAYS, daysBetween(shutdown.startsOn, shutdown.endsOn) + 1);
  const days = Array.from({ length }, (_, index) => daysAfter(shutdown.startsOn, index));
  const byDay = (rows: readonly { day: string | null; count: number }[]) =>
    new Map(rows.flatMap((row) => (row.day ? [[row.day, row.count] as const] : [])));
  return {
    plan: cumulative(days, byDay(planned.rows)),
    actual: cumulative(
      days.filter((day) => day <= today),
      byDay(tight.rows),
    ),
    unplanned: planned.rows.find((row) => row.day === null)?.count ?? 0,
  };
}
