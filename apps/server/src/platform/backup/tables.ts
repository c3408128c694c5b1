import pg from 'pg';

export interface BackedUpTable {
  readonly table: string;
  readonly columns: readonly string[];
  readonly key: readonly string[];
}

/**
 * Tables whose rows a backup leaves out: sessions, so that nobody is signed in by a restored file, and the list of
 * migrations, which stands in its head.
 */
const LEFT_OUT = ['session', '_prisma_migrations'];

/** Every table of the schema with its columns and primary key, in the order of their names. */
export async function backedUpTables(client: pg.ClientBase): Promise<BackedUpTable[]> {
  const { rows } = await client.query<{ table: string; columns: string[]; key: string[] }>(
    `SELECT c.relname AS table,
       (SELECT array_agg(a.attname::text ORDER BY a.attnum) FROM pg_attribute a
         WHERE a.attrelid = c.oid AND a.attnum > 0 AND NOT a.attisdropped AND a.attgenerated = '') AS columns,
       (SELECT array_agg(a.attname::text ORDER BY k.place) FROM pg_index i,
          unnest(i.indkey::int[]) WITH ORDINALITY AS k (attnum, place), pg_attribute a
         WHERE i.indrelid = c.oid AND i.indisprimary AND a.attrelid = c.oid AND a.attnum = k.attnum) AS key
     FROM pg_class c JOIN pg_namespace n ON n.oid = c.relnamespace
     WHERE n.nspname = 'public' AND c.relkind = 'r' AND NOT c.relname = ANY($1)`,
    [LEFT_OUT],
  );
  for (const { table, key } of rows)
    if (!key) throw new Error(`Table ${table} has no primary key, so its rows have no order in a backup.`);
  // Not by the database's own order of text, which differs between servers.
  return rows.sort((one, other) => (one.table < other.table ? -1 : 1));
}

const list = (names: readonly string[]): string => names.map((name) => pg.escapeIdentifier(name)).join(', ');

export const copyOutSql = ({ table, columns, key }: BackedUpTable): string =>
  `COPY (SELECT ${list(columns)} FROM public.${pg.escapeIdentifier(table)} ORDER BY ${list(key)}) TO STDOUT`;

export const copyInSql = ({ table, columns }: Pick<BackedUpTable, 'table' | 'columns'>): string =>
  `COPY public.${pg.escapeIdentifier(table)} (${list(columns)}) FROM STDIN`;

/** Text forms that do not depend on the server's or the role's settings. */
export const PLAIN_TEXT_FORMS = `SET LOCAL datestyle = 'ISO'; SET LOCAL timezone = 'UTC'; SET LOCAL bytea_output = 'hex';
  SET LOCAL extra_float_digits = 1; SET LOCAL intervalstyle = 'postgres'; SET LOCAL statement_timeout = 0;
  SET LOCAL idle_in_transaction_session_timeout = 0; SET LOCAL lock_timeout = 0`;
