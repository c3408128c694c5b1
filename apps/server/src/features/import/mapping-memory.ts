import { createHash } from 'node:crypto';
import { type ColumnMapping, REGISTER_FIELDS } from '@seatwell/workflow';
import type { Database, Transaction } from '../../platform/database/pool.ts';
import { Problem } from '../../platform/errors/problem.ts';

const headersHash = (headers: readonly string[]): string =>
  createHash('sha256')
    .update(JSON.stringify(headers.map((header) => header.trim().toLowerCase())))
    .digest('hex');

/** The columns that were chosen the last time a sheet had these headers. */
export async function rememberedMapping(
  db: Database | Transaction,
  siteId: string,
  headers: readonly string[],
): Promise<ColumnMapping | null> {
  const { rows } = await db.query<{ mapping: ColumnMapping }>(
    'SELECT mapping FROM import_mapping WHERE site_id = $1 AND headers_hash = $2',
    [siteId, headersHash(headers)],
  );
  return rows[0]?.mapping ?? null;
}

export async function rememberMapping(
  tx: Transaction,
  siteId: string,
  headers: readonly string[],
  mapping: ColumnMapping,
): Promise<void> {
  await tx.query(
    `INSERT INTO import_mapping (site_id, headers_hash, mapping, used_at) VALUES ($1, $2, $3, now())
     ON CONFLICT (site_id, headers_hash) DO UPDATE SET mapping = excluded.mapping, used_at = excluded.used_at`,
    [siteId, headersHash(headers), JSON.stringify(mapping)],
  );
}

/** @throws Problem `bad-input` for fields that no register has, and for two fields in one column */
export function checkedMapping(mapping: Readonly<Record<string, number>>, width: number): ColumnMapping {
  const known: ReadonlySet<string> = new Set(REGISTER_FIELDS);
  const columns = new Map<number, string>();
  for (const [field, column] of Object.entries(mapping)) {
    if (!known.has(field)) throw new Problem('bad-input', `“${field}” is no field of a register.`);
    if (column >= width) throw new Problem('bad-input', `The sheet has ${width} columns, “${field}” points beyond.`);
    const other = columns.get(column);
    if (other) throw new Problem('bad-input', `One column cannot be both “${other}” and “${field}”. Choose one.`);
    columns.set(column, field);
  }
  return mapping as ColumnMapping;
}
