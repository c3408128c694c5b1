import type { TodayAnswer } from '@seatwell/contract';

type Curve = TodayAnswer['curve'];

/** Where the shutdown stands against its plan today, counted in joints tight. */
export interface Standing {
  readonly actual: number;
  readonly planned: number;
  /** above 0: ahead of the plan */
  readonly ahead: number;
}

/** Actual and planned count at the end of the last day that has an actual count; undefined before the first. */
export function standing({ plan, actual }: Curve): Standing | undefined {
  const last = actual.at(-1);
  if (!last) return undefined;
  const planned = plan.filter((point) => point.day <= last.day).at(-1)?.count ?? 0;
  return { actual: last.count, planned, ahead: last.count - planned };
}

export interface Finish {
  /** joints made tight a day, mean of the days looked at */
  readonly perDay: number;
  readonly days: number;
  readonly left: number;
  /** the day on which the last joint would be tight, 2027-03-26 */
  readonly on: string;
}

// Fewer whole days say nothing about a pace.
const leastDays = 3;

/**
 * When the last joint would be tight if the pace of the last whole days went on. No forecast of anything else:
 * it knows neither what is left to find nor what holds the work up.
 * @param today the running day: it is not over and does not count
 * @returns undefined where there are too few days, nothing was tightened in them, or nothing is left
 */
export function finishAtPace({ actual }: Curve, total: number, today: string): Finish | undefined {
  const whole = actual.filter((point) => point.day < today);
  const now = actual.at(-1)?.count ?? 0;
  const left = total - now;
  const from = whole.at(-1 - leastDays);
  const until = whole.at(-1);
  if (left <= 0 || !from || !until) return undefined;
  const perDay = (until.count - from.count) / leastDays;
  if (perDay <= 0) return undefined;
  return { perDay, days: leastDays, left, on: dayAfter(today, Math.ceil(left / perDay)) };
}

function dayAfter(day: string, days: number): string {
  const at = new Date(`${day}T12:00:00Z`);
  at.setUTCDate(at.getUTCDate() + days);
  return at.toISOString().slice(0, 10);
}
