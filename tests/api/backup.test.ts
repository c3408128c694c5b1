import { copyFileSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gunzipSync, gzipSync } from 'node:zlib';
import fc from 'fast-check';
import pg from 'pg';
import { uuidv7 } from 'uuidv7';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import { restoreBackup } from '../../apps/server/src/features/operating/restore-backup.ts';
import { verifyDatabase, verifyFile } from '../../apps/server/src/features/operating/verify/verify-sources.ts';
import { readBackup } from '../../apps/server/src/platform/backup/read-backup.ts';
import { writeBackup } from '../../apps/server/src/platform/backup/write-backup.ts';
import { migrationFiles } from '../../apps/server/src/platform/database/migration-files.ts';
import { expectFoldIsProjection } from './support/compare.ts';
import { createTestDatabase, databaseUrl } from './support/database.ts';
import { accepted, siteCommand } from './support/plant.ts';
import { listJoint, openShutdown, type Shutdown } from './support/shutdown.ts';
import { engineer, openAndNipUp, release } from './support/work.ts';

let shutdown: Shutdown;
let folder: string;
let file: string;
const erased = uuidv7();
const made: string[] = [];

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'seatwell-backup-'));
  file = join(folder, 'plant.backup');
  shutdown = await openShutdown();
  const joint = await listJoint(shutdown);
  await listJoint(shutdown, { tag: 'tab\there' });
  await engineer(shutdown, joint);
  await release(shutdown, joint);
  await openAndNipUp(shutdown, joint);
  await erase('Petra Forgotten', 'petra.forgotten@plant.example');
  await as(shutdown.plant.database.url, (client) => writeBackup(client, file, '0.0.0'));
});
afterAll(async () => {
  await shutdown.close();
  const server = new pg.Client({ connectionString: inject('postgres') });
  await server.connect();
  for (const name of made) await server.query(`DROP DATABASE IF EXISTS ${name} WITH (FORCE)`);
  await server.end();
  rmSync(folder, { recursive: true, force: true });
});

async function as<T>(url: string, work: (client: pg.Client) => Promise<T>): Promise<T> {
  const client = new pg.Client({ connectionString: url });
  await client.connect();
  try {
    return await work(client);
  } finally {
    await client.end();
  }
}

/** A person who had an account, and whom the site was asked to forget. */
async function erase(name: string, email: string): Promise<void> {
  const { plant } = shutdown;
  const accountId = uuidv7();
  const say = async (...[type, subjectId, payload]: [Parameters<typeof siteCommand>[2], string, object]) =>
    accepted(await siteCommand(plant, plant.administrator, type, subjectId, payload as never));
  await say('person-registered', erased, {
    personId: erased,
    name,
    company: 'Contractor',
    badge: 'B-7781',
    trade: null,
  });
  await say('account-opened', accountId, { accountId, personId: erased, email });
  await say('account-closed', accountId, { reason: 'Left' });
  await say('person-erased', erased, { reason: 'Asked for' });
}

/** A database with nothing in it. */
async function emptyDatabase(): Promise<string> {
  const name = `restored_${uuidv7().replaceAll('-', '')}`;
  await as(inject('postgres'), (client) => client.query(`CREATE DATABASE ${name}`));
  made.push(name);
  return databaseUrl(inject('postgres'), name);
}

const tablesOf = (url: string): Promise<string[]> =>
  as(url, async (client) => {
    const { rows } = await client.query("SELECT tablename FROM pg_tables WHERE schemaname = 'public'");
    return rows.map((row) => row.tablename);
  });

const restoreInto = (url: string, from = file, migrations = migrationFiles()) =>
  as(url, (client) => restoreBackup(client, from, migrations));

describe('a backup', () => {
  it('is a file for its owner only, and nothing unfinished is left beside it', () => {
    expect(statSync(file).mode & 0o777).toBe(0o600);
    expect(readdirSync(folder).filter((name) => name.startsWith('.'))).toEqual([]);
  });

  it('says at its beginning what it holds', async () => {
    const { head } = await readBackup(file);
    expect(head.holds).toMatch(/names, e-mail addresses and password hashes/);
    expect(head.migrations.map(({ name }) => name)).toEqual(migrationFiles().map(({ name }) => name));
  });

  it('holds every table but the sessions', async () => {
    const { tables } = await readBackup(file);
    const expected = (await tablesOf(shutdown.plant.database.url)).filter(
      (name) => !['session', '_prisma_migrations'].includes(name),
    );
    expect(tables.map(({ table }) => table)).toEqual(expected.sort());
    expect(tables.find(({ table }) => table === 'event')?.rows).toBeGreaterThan(20);
  });

  it('holds no name, badge or address of a person who was erased', async () => {
    const text = gunzipSync(readFileSync(file)).toString('utf8');
    // Never the whole file as the message of a failure.
    const found = (what: string | RegExp) => (typeof what === 'string' ? text.includes(what) : what.test(text));
    expect(found('Theo Technician')).toBe(true);
    expect(found(/Forgotten|B-7781/i)).toBe(false);
    expect(found(Buffer.from('Forgotten').toString('hex'))).toBe(false);
    expect(found(Buffer.from('B-7781').toString('hex'))).toBe(false);
    expect(found('@erased.invalid')).toBe(true);
    expect(await verifyFile(file, true)).toMatchObject({ problems: 0 });
  });

  it('replaces no file', async () => {
    const before = readFileSync(file);
    await expect(as(shutdown.plant.database.url, (client) => writeBackup(client, file, '0.0.0'))).rejects.toThrow(
      /is there already/,
    );
    expect(readFileSync(file).equals(before)).toBe(true);
  });
});

describe('a restore', () => {
  it('gives the same heads, the same joints and the same bytes in every table', async () => {
    const url = await emptyDatabase();
    const restored = await restoreInto(url);
    expect(restored.verified).toMatchObject({ problems: 0, jointsFolded: 2 });
    await as(url, (client) => expectFoldIsProjection(client, shutdown.shutdownId));
    const again = join(folder, 'again.backup');
    await as(url, (client) => writeBackup(client, again, '0.0.0'));
    const [one, other] = [await readBackup(file), await readBackup(again)];
    expect(other.tables).toEqual(one.tables);
    expect(other.heads).toEqual(one.heads);
  });

  it('makes use of a database that Seatwell was started on and that nobody used', async () => {
    const fresh = await createTestDatabase();
    expect((await restoreInto(fresh.url)).verified.problems).toBe(0);
    await fresh.drop();
  });

  it('is refused where anything is', async () => {
    await expect(restoreInto(shutdown.plant.database.url)).rejects.toThrow(/is in use: its table \w+ holds rows/);
    const url = await emptyDatabase();
    await as(url, (client) => client.query('CREATE TABLE ledger (entry text)'));
    await expect(restoreInto(url)).rejects.toThrow(/not Seatwell's \(ledger/);
    expect(await tablesOf(url)).toEqual(['ledger']);
  });

  it('of a file from a newer version is refused with the version that can', async () => {
    const url = await emptyDatabase();
    await expect(restoreInto(url, file, migrationFiles().slice(0, -1))).rejects.toThrow(
      /does not know: restore it with version 0\.0\.0 or newer/,
    );
    expect(await tablesOf(url)).toEqual([]);
  });

  it('of a file that was damaged anywhere, or cut short, changes nothing', async () => {
    const url = await emptyDatabase();
    const whole = readFileSync(file);
    const broken = join(folder, 'broken.backup');
    const damage = fc.oneof(
      fc.nat(whole.length - 1).map((at) => whole.subarray(0, at)),
      fc.nat(whole.length - 1).map((at) => {
        const bytes = Buffer.from(whole);
        bytes[at] = (bytes[at] ?? 0) ^ 0x55;
        return bytes;
      }),
    );
    await fc.assert(
      fc.asyncProperty(damage, async (bytes) => {
        writeFileSync(broken, bytes);
        // gzip's head holds a time and a system that nobody reads.
        const same = await readBackup(broken).then(
          () => gunzipSync(bytes).equals(gunzipSync(whole)),
          () => false,
        );
        if (same) return;
        await expect(restoreInto(url, broken)).rejects.toThrow(/damaged or cut short|is no backup/);
        expect(await tablesOf(url)).toEqual([]);
      }),
      { numRuns: 60 },
    );
  });

  it('of a file whose rows were changed and hashed again is refused by the record itself', async () => {
    const url = await emptyDatabase();
    const forged = join(folder, 'forged.backup');
    await as(await emptyDatabase(), async (client) => {
      await restoreBackup(client, file);
      await client.query('ALTER TABLE event DISABLE TRIGGER ALL');
      await client.query(
        "UPDATE event SET payload = payload || '{\"accepted\": false}' WHERE type = 'faces-inspected'",
      );
      await writeBackup(client, forged, '0.0.0');
    });
    await expect(restoreInto(url, forged)).rejects.toThrow(/does not verify.*payload say something else/s);
    expect(await tablesOf(url)).toEqual([]);
  });

  it('of something else is refused', async () => {
    const other = join(folder, 'other.gz');
    writeFileSync(other, gzipSync('{"hello":"world"}\n'));
    const url = await emptyDatabase();
    await expect(restoreInto(url, other)).rejects.toThrow(/is no backup of Seatwell/);
    await expect(restoreInto(url, join(folder, 'nowhere'))).rejects.toThrow(/cannot be read \(ENOENT\)/);
  });
});

describe('a verification', () => {
  const FORGERIES: Record<string, [sql: string, finding: RegExp]> = {
    'an event whose bytes were changed': [
      "UPDATE event SET canonical = convert_to(replace(convert_from(canonical, 'UTF8'), '12', '13'), 'UTF8') WHERE type = 'nipped-up'",
      /head is .*, and its events give/,
    ],
    'an event that was removed': ["DELETE FROM event WHERE type = 'opened'", /has number \d+, not/],
    'a joint that stands better than its events say': [
      "UPDATE joint SET stage = 'proven' WHERE stage = 'nipped-up'",
      /stands as proven in the register and folds to nipped-up/,
    ],
    'a joint that is missing from the register': ["DELETE FROM joint WHERE stage = 'nipped-up'", /not in the register/],
    'a name that is not the one on record': [
      "UPDATE person SET name = 'Somebody Else' WHERE name = 'Theo Technician'",
      /is not the one that the record committed to/,
    ],
    'a name of somebody who was erased': [
      "UPDATE person SET name = 'Petra Forgotten' WHERE erased_at IS NOT NULL",
      /was erased, and a name, badge or e-mail address is still there/,
    ],
    'a head that was set back': [
      'UPDATE stream_head SET sequence = sequence - 1',
      /its head counts \d+ events, and there are/,
    ],
  };

  it.each(Object.keys(FORGERIES))('names %s, in the database and in a backup of it', async (what) => {
    const [sql, finding] = FORGERIES[what] ?? ['', /./];
    const url = await emptyDatabase();
    const forged = join(folder, `${uuidv7()}.backup`);
    await as(url, async (client) => {
      await restoreBackup(client, file);
      expect((await verifyDatabase(client, true)).problems).toBe(0);
      await client.query('ALTER TABLE event DISABLE TRIGGER ALL');
      await client.query(sql);
      const { problems, findings } = await verifyDatabase(client, true);
      expect(problems).toBeGreaterThan(0);
      expect(findings.join('\n')).toMatch(finding);
      await writeBackup(client, forged, '0.0.0');
    });
    expect((await verifyFile(forged, true)).findings.join('\n')).toMatch(finding);
  });

  it('names a photo whose bytes were changed', async () => {
    const copy = join(folder, 'photo.backup');
    copyFileSync(file, copy);
    const url = await emptyDatabase();
    await as(url, async (client) => {
      await restoreBackup(client, copy);
      const { rows } = await client.query('SELECT site_id FROM site');
      await client.query(
        "INSERT INTO stored_file (site_id, hash, media_type, size, content, stored_at) VALUES ($1, $2, 'image/jpeg', 3, 'abc', now())",
        [rows[0].site_id, 'f'.repeat(64)],
      );
      const { findings, files } = await verifyDatabase(client);
      expect(files).toBe(1);
      expect(findings.join()).toMatch(/File f+ has other bytes/);
    });
  });
});
