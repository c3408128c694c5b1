import type { Transaction } from '../../platform/database/pool.ts';
import { Problem } from '../../platform/errors/problem.ts';

const KEYS: Readonly<Record<string, string>> = {
  shutdown: 'site_id, shutdown_id',
  area: 'site_id, shutdown_id, area_id',
  system: 'site_id, shutdown_id, system_id',
  crew: 'site_id, shutdown_id, crew_id',
  test_pack: 'site_id, shutdown_id, pack_id',
  permit: 'site_id, shutdown_id, permit_id',
  talk: 'site_id, shutdown_id, talk_id',
  punch_item: 'site_id, shutdown_id, punch_id',
  item: 'site_id, shutdown_id, item_id',
  blind: 'site_id, shutdown_id, blind_id',
  person: 'site_id, person_id',
  account: 'site_id, account_id',
  role_grant: 'site_id, grant_id',
  qualification: 'site_id, qualification_id',
  tool: 'site_id, tool_id',
  calibration: 'site_id, calibration_id',
  procedure_revision: 'site_id, procedure_id, revision',
  target_table: 'site_id, table_id',
  sourced_data: 'site_id, data_id',
};

/**
 * Inserts a projection row, or changes the columns that may change when the same key comes again.
 * Table and column names come from our own code, never from a request.
 * @throws Problem `already-exists` when the key, or a code that must be unique, is taken
 */
export async function insertOrRefuse(
  tx: Transaction,
  table: keyof typeof KEYS & string,
  row: Readonly<Record<string, unknown>>,
  changeable: readonly string[] = [],
): Promise<void> {
  const columns = Object.keys(row);
  const onConflict =
    changeable.length > 0
      ? ` ON CONFLICT (${KEYS[table]}) DO UPDATE SET ${changeable.map((c) => `${c} = excluded.${c}`).join(', ')}`
      : '';
  try {
    await tx.query(
      `INSERT INTO ${table} (${columns.join(', ')}) VALUES (${columns.map((_, i) => `$${i + 1}`).join(', ')})${onConflict}`,
      Object.values(row),
    );
  } catch (error) {
    if ((error as { code?: string }).code !== '23505') throw error;
    const { detail } = error as { detail?: string };
    throw new Problem(
      'already-exists',
      `There is one already: ${detail ?? table}. Choose another code or change the one there is.`,
    );
  }
}
