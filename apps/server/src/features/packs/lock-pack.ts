import type { Transaction } from '../../platform/database/pool.ts';
import { Problem } from '../../platform/errors/problem.ts';

export interface PackRow {
  readonly number: string;
  readonly areaId: string | null;
  readonly version: number;
}

/**
 * Locks a pack before any of its joints, as every command does.
 * @throws Problem `not-found` for a pack that this shutdown does not have
 */
export async function lockPack(tx: Transaction, siteId: string, shutdownId: string, packId: string): Promise<PackRow> {
  const { rows } = await tx.query<PackRow>(
    `SELECT number, area_id AS "areaId", version FROM test_pack
     WHERE site_id = $1 AND shutdown_id = $2 AND pack_id = $3 FOR UPDATE`,
    [siteId, shutdownId, packId],
  );
  const pack = rows[0];
  if (!pack) throw new Problem('not-found', `This shutdown has no test pack ${packId}.`);
  return pack;
}
