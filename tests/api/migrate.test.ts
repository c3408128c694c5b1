import pg from 'pg';
import { afterEach, expect, inject, test } from 'vitest';
import { migrate } from '../../apps/server/src/platform/database/migrate.ts';
import { type MigrationFile, migrationFiles } from '../../apps/server/src/platform/database/migration-files.ts';
import { createTestDatabase, type TestDatabase } from './support/database.ts';

let database: TestDatabase | undefined;

afterEach(async () => {
  await database?.drop();
});

/** A database with all migrations applied, as a plant would have it. */
async function migratedDatabase(): Promise<string> {
  database = await createTestDatabase();
  return database.url;
}

const addition = (name: string, sql: string): MigrationFile => ({ name, sql, checksum: 'c'.repeat(64) });

async function tableExists(url: string, name: string): Promise<boolean> {
  const client = new pg.Client({ connectionString: url });
  await client.connect();
  try {
    const { rows } = await client.query('SELECT to_regclass($1) IS NOT NULL AS found', [name]);
    return rows[0].found;
  } finally {
    await client.end();
  }
}

test('a migrated database needs nothing more, and every migration is on its books with its checksum', async () => {
  const url = await migratedDatabase();

  expect(await migrate(url)).toEqual([]);

  const client = new pg.Client({ connectionString: url });
  await client.connect();
  const { rows } = await client.query(
    'SELECT migration_name AS name, checksum, finished_at IS NOT NULL AS finished FROM _prisma_migrations ORDER BY 1',
  );
  await client.end();
  expect(rows.length).toBeGreaterThan(0);
  expect(rows).toEqual(migrationFiles().map(({ name, checksum }) => ({ name, checksum, finished: true })));
});

test('two starts at once apply a migration once', async () => {
  const url = await migratedDatabase();
  const files = [...migrationFiles(), addition('29990101_crane', 'CREATE TABLE crane (id int)')];

  const applied = await Promise.all([migrate(url, files), migrate(url, files), migrate(url, files)]);

  expect(applied.flat()).toEqual(['29990101_crane']);
});

test('a migration that fails is undone as a whole and can be tried again', async () => {
  const url = await migratedDatabase();
  const broken = addition('29990101_crane', 'CREATE TABLE crane (id int); SELECT 1 / 0;');

  await expect(migrate(url, [...migrationFiles(), broken])).rejects.toThrow(
    'The migration 29990101_crane failed and was undone: division by zero',
  );
  expect(await tableExists(url, 'crane')).toBe(false);

  const mended = addition('29990101_crane', 'CREATE TABLE crane (id int)');
  expect(await migrate(url, [...migrationFiles(), mended])).toEqual(['29990101_crane']);
  expect(await tableExists(url, 'crane')).toBe(true);
});

test('a changed migration, and a database from a newer version, are refused with the remedy', async () => {
  const url = await migratedDatabase();
  const [first, ...others] = migrationFiles();
  if (first === undefined) throw new Error('no migrations');

  await expect(migrate(url, [{ ...first, checksum: 'd'.repeat(64) }, ...others])).rejects.toThrow(
    `The file of the migration ${first.name} has changed since it was applied`,
  );
  await expect(migrate(url, others)).rejects.toThrow(
    `The database has the migration ${first.name}, which this version of Seatwell does not know`,
  );
});

test('clones of the template are independent and start empty of each other', async () => {
  const one = await createTestDatabase(inject('postgres'));
  const other = await createTestDatabase(inject('postgres'));
  try {
    await migrate(one.url, [...migrationFiles(), addition('29990101_crane', 'CREATE TABLE crane (id int)')]);
    expect(await tableExists(one.url, 'crane')).toBe(true);
    expect(await tableExists(other.url, 'crane')).toBe(false);
  } finally {
    await one.drop();
    await other.drop();
  }
});
