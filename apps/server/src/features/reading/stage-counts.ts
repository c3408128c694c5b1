import { type CountsByStage, STAGES, type Stage } from '@seatwell/contract';
import { hasReached } from '@seatwell/workflow';
import type { RollupDelta } from '../recording/decision.ts';
import type { Reading } from './reading.ts';

export const noCounts = (): CountsByStage => Object.fromEntries(STAGES.map((stage) => [stage, 0])) as CountsByStage;

export const totalOf = (counts: CountsByStage): number => Object.values(counts).reduce((sum, count) => sum + count, 0);

/** Joints that have reached a stage or gone beyond it. */
export const reached = (counts: CountsByStage, stage: Stage): number =>
  STAGES.reduce((sum, each) => (hasReached(each, stage) ? sum + counts[each] : sum), 0);

/** Joints by stage of every area, system or pack, or of the shutdown as a whole: kept with each event. */
export async function rollupOf(
  { db, siteId, shutdownId }: Pick<Reading, 'db' | 'siteId' | 'shutdownId'>,
  dimension: RollupDelta['dimension'],
): Promise<Map<string, CountsByStage>> {
  const { rows } = await db.query<{ key: string; stage: Stage; count: number }>({
    name: 'rollup-of',
    text: 'SELECT key, stage, count FROM rollup WHERE site_id = $1 AND shutdown_id = $2 AND dimension = $3',
    values: [siteId, shutdownId, dimension],
  });
  const counts = new Map<string, CountsByStage>();
  for (const row of rows) {
    const known = counts.get(row.key) ?? noCounts();
    known[row.stage] = row.count;
    counts.set(row.key, known);
  }
  return counts;
}

/** All joints of the shutdown by stage, void ones left out. */
export async function shutdownCounts(reading: Pick<Reading, 'db' | 'siteId' | 'shutdownId'>): Promise<CountsByStage> {
  return (await rollupOf(reading, 'shutdown')).get(reading.shutdownId) ?? noCounts();
}
