import type { Database } from '../../platform/database/pool.ts';
import { Problem } from '../../platform/errors/problem.ts';

export interface RecordHead {
  readonly sequence: number;
  /** Merkle root, hex */
  readonly root: string;
}

/** The head of a stream now. @throws Problem `not-found` */
export async function headOf(
  db: Database,
  siteId: string,
  streamId: string,
): Promise<RecordHead & { readonly changedAt: Date }> {
  const { rows } = await db.query<RecordHead & { changedAt: Date }>({
    name: 'record-head',
    text: `SELECT sequence, encode(root, 'hex') AS root, changed_at AS "changedAt" FROM stream_head
           WHERE site_id = $1 AND stream_id = $2`,
    values: [siteId, streamId],
  });
  if (!rows[0]) throw new Problem('not-found', 'There is no such record.');
  return rows[0];
}
