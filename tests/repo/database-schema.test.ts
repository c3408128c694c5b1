import { execFileSync } from 'node:child_process';
import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import pg from 'pg';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { migrate } from '../../apps/server/src/platform/database/migrate.ts';
import { databaseUrl } from '../api/support/database.ts';
import { startTestPostgres } from '../api/support/database-server.ts';
import { sqlFromEmpty } from './support/schema-diff.mjs';
import { repositoryRoot } from './support/source-files.ts';

const schemaFile = join(repositoryRoot, 'prisma', 'schema.prisma');

/** Tables, columns, keys and indexes; what the migrations add beyond Prisma's language is named extra_…. */
const CATALOGUE = `
  SELECT 'column ' || c.relname || '.' || a.attname || ' ' || format_type(a.atttypid, a.atttypmod)
      || CASE WHEN a.attnotnull THEN ' not null' ELSE '' END || coalesce(' default ' || pg_get_expr(d.adbin, d.adrelid), '') AS line
    FROM pg_attribute a JOIN pg_class c ON c.oid = a.attrelid JOIN pg_namespace n ON n.oid = c.relnamespace
    LEFT JOIN pg_attrdef d ON d.adrelid = a.attrelid AND d.adnum = a.attnum
    WHERE n.nspname = 'public' AND c.relkind = 'r' AND a.attnum > 0 AND NOT a.attisdropped
  UNION ALL
  SELECT 'index ' || indexdef FROM pg_indexes WHERE schemaname = 'public' AND indexname NOT LIKE 'extra\\_%'
  ORDER BY line`;

async function catalogueOf(url: string): Promise<string[]> {
  const client = new pg.Client({ connectionString: url });
  await client.connect();
  const { rows } = await client.query<{ line: string }>(CATALOGUE);
  await client.end();
  return rows.map((row) => row.line).filter((line) => !line.includes('_prisma_migrations'));
}

describe('the database', () => {
  let server: Awaited<ReturnType<typeof startTestPostgres>>;
  beforeAll(async () => {
    server = await startTestPostgres();
  });
  afterAll(() => server.stop());

  async function createDatabase(name: string): Promise<string> {
    const client = new pg.Client({ connectionString: server.superuserUrl });
    await client.connect();
    await client.query(`CREATE DATABASE ${name}`);
    await client.end();
    return databaseUrl(server.superuserUrl, name);
  }

  it('that the migrations make on an empty database is the one of schema.prisma', async () => {
    const migrated = await createDatabase('migrated');
    await migrate(migrated);
    const described = await createDatabase('described');
    process.env['SCHEMA_DIFF_URL'] = server.superuserUrl;
    const client = new pg.Client({ connectionString: described });
    await client.connect();
    await client.query(await sqlFromEmpty(readFileSync(schemaFile, 'utf8')));
    await client.end();
    const expected = await catalogueOf(described);
    expect(expected.length).toBeGreaterThan(200);
    expect(await catalogueOf(migrated)).toEqual(expected);
  });
});

describe('the committed Prisma client', () => {
  it('is what the schema generates', () => {
    const folder = mkdtempSync(join(tmpdir(), 'seatwell-client-'));
    try {
      const schema = readFileSync(schemaFile, 'utf8').replace(
        /output\s*=\s*"[^"]*"/,
        `output = "${join(folder, 'generated')}"`,
      );
      cpSync(schemaFile, join(folder, 'schema.prisma'));
      execFileSync('sh', ['-c', 'cat > "$0"', join(folder, 'schema.prisma')], { input: schema });
      execFileSync(
        process.execPath,
        ['node_modules/prisma/build/index.js', 'generate', '--schema', join(folder, 'schema.prisma')],
        {
          cwd: repositoryRoot,
          // Any executable will do: generating needs no engine, but asks for one (and would fetch it).
          env: { ...process.env, PRISMA_SCHEMA_ENGINE_BINARY: process.execPath, PRISMA_HIDE_UPDATE_MESSAGE: '1' },
          stdio: 'pipe',
        },
      );
      const committed = join(repositoryRoot, 'apps', 'server', 'src', 'platform', 'database', 'generated');
      const read = (root: string) =>
        Object.fromEntries(
          readdirSync(root, { recursive: true, withFileTypes: true })
            .filter((entry) => entry.isFile() && entry.name.endsWith('.ts'))
            .map((entry) => {
              const file = join(entry.parentPath, entry.name);
              return [
                file.slice(root.length + 1),
                readFileSync(file, 'utf8').replace(/^\s*"inlineSchema":.*$|^.*output.*=.*".*generated.*$/gm, ''),
              ];
            }),
        );
      const fresh = read(join(folder, 'generated'));
      expect(Object.keys(fresh).length).toBeGreaterThan(20);
      expect(read(committed)).toEqual(fresh);
    } finally {
      rmSync(folder, { recursive: true, force: true });
    }
  });
});
