import { type RegisterAnswer, type RegisterFilters, STAGES, type Stage } from '@seatwell/contract';
import type { Reading } from '../reading/reading.ts';
import { noCounts, rollupOf } from '../reading/stage-counts.ts';
import { registerConditions, Values, WITHOUT_TARGET } from './register-filters.ts';

type Total = NonNullable<RegisterAnswer['total']>;

/** Beyond this many, the count says "at least": nobody reads the difference, and counting costs more than the page. */
const COUNT_UP_TO = 10_000;

const BY_STAGE = new Set(['stage', 'stageFrom', 'stageTo', 'voided', 'sort', 'descending', 'cursor', 'from', 'limit']);

/** The dimension whose counts by stage answer for these filters; null when they ask for more than one. */
function countedBy(filters: RegisterFilters, shutdownId: string) {
  if (filters.voided !== 'no') return null;
  const set = Object.entries(filters)
    .filter(
      ([name, value]) => value !== undefined && !(Array.isArray(value) && value.length === 0) && !BY_STAGE.has(name),
    )
    .map(([name]) => name);
  const [name] = set;
  if (set.length > 1) return null;
  if (!name) return { dimension: 'shutdown' as const, keys: [shutdownId] };
  if (name === 'area' && filters.area) return { dimension: 'area' as const, keys: filters.area };
  if (name === 'system' && filters.system) return { dimension: 'system' as const, keys: filters.system };
  if (name === 'pack' && filters.pack) return { dimension: 'pack' as const, keys: [filters.pack] };
  return null;
}

function stagesOf({ stage, stageFrom, stageTo }: RegisterFilters): Stage[] {
  const from = stageFrom ? STAGES.indexOf(stageFrom) : 0;
  const to = stageTo ? STAGES.indexOf(stageTo) : STAGES.length - 1;
  return STAGES.filter((each, rank) => rank >= from && rank <= to && (!stage?.length || stage.includes(each)));
}

/** Joints behind the filters: from the counts by stage where those answer, else counted up to a limit. */
export async function registerTotal(reading: Reading, filters: RegisterFilters): Promise<Total> {
  const counted = countedBy(filters, reading.shutdownId);
  if (counted) {
    const rollup = await rollupOf(reading, counted.dimension);
    const sums = [...new Set(counted.keys)].flatMap((key) =>
      stagesOf(filters).map((stage) => (rollup.get(key) ?? noCounts())[stage]),
    );
    return { count: sums.reduce((sum, count) => sum + count, 0), exact: true };
  }
  const values = new Values();
  const conditions = registerConditions(reading, filters, values);
  const { rows } = await reading.db.query<{ count: number }>(
    `SELECT count(*) AS count FROM (SELECT 1 FROM joint j WHERE ${conditions.join(' AND ')} LIMIT ${COUNT_UP_TO + 1}) counted`,
    values.list,
  );
  const count = rows[0]?.count ?? 0;
  return { count: Math.min(count, COUNT_UP_TO), exact: count <= COUNT_UP_TO };
}

/** What the register's headline says of all its joints. */
export async function wholeRegister({
  db,
  siteId,
  shutdownId,
}: Reading): Promise<{ withoutTarget: number; foundCount: number }> {
  const { rows } = await db.query<{ withoutTarget: number; foundCount: number }>({
    name: 'whole-register',
    text: `SELECT
      (SELECT count(*) FROM joint j WHERE j.site_id = $1 AND j.shutdown_id = $2 AND j.voided IS NULL AND ${WITHOUT_TARGET})
        AS "withoutTarget",
      (SELECT count(*) FROM joint j WHERE j.site_id = $1 AND j.shutdown_id = $2 AND j.voided IS NULL AND j.found) AS "foundCount"`,
    values: [siteId, shutdownId],
  });
  return rows[0] ?? { withoutTarget: 0, foundCount: 0 };
}
