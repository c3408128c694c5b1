import type { Transaction } from '../../platform/database/pool.ts';
import type { RollupDelta } from './decision.ts';

/** Adds up what cancels out, so that a move within a stage writes nothing. */
function condensed(deltas: readonly RollupDelta[]): RollupDelta[] {
  const byKey = new Map<string, RollupDelta>();
  for (const delta of deltas) {
    const key = `${delta.dimension} ${delta.key} ${delta.stage}`;
    const known = byKey.get(key);
    byKey.set(key, { ...delta, count: delta.count + (known?.count ?? 0) });
  }
  return [...byKey.entries()]
    .filter(([, delta]) => delta.count !== 0)
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([, delta]) => delta);
}

/** Moves the counts of joints by stage; runs under the stream head's lock, so that no two commands cross. */
export async function applyRollup(
  tx: Transaction,
  siteId: string,
  shutdownId: string,
  deltas: readonly RollupDelta[],
): Promise<void> {
  const moves = condensed(deltas);
  if (moves.length === 0) return;
  await tx.query({
    name: 'apply-rollup',
    text: `INSERT INTO rollup (site_id, shutdown_id, dimension, key, stage, count)
      SELECT $1, $2, m.dimension, m.key, m.stage, m.count
      FROM unnest($3::text[], $4::uuid[], $5::text[], $6::int[]) AS m (dimension, key, stage, count)
      ON CONFLICT (site_id, shutdown_id, dimension, key, stage) DO UPDATE SET count = rollup.count + excluded.count`,
    values: [
      siteId,
      shutdownId,
      moves.map((move) => move.dimension),
      moves.map((move) => move.key),
      moves.map((move) => move.stage),
      moves.map((move) => move.count),
    ],
  });
}
