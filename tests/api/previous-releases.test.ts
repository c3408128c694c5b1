import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import pg from 'pg';
import supertest from 'supertest';
import { uuidv7 } from 'uuidv7';
import { describe, expect, inject, it } from 'vitest';
import { createApp } from '../../apps/server/src/app.ts';
import { restoreBackup } from '../../apps/server/src/features/operating/restore-backup.ts';
import { verifyDatabase } from '../../apps/server/src/features/operating/verify/verify-sources.ts';
import { readBackup } from '../../apps/server/src/platform/backup/read-backup.ts';
import { migrate } from '../../apps/server/src/platform/database/migrate.ts';
import { migrationFiles } from '../../apps/server/src/platform/database/migration-files.ts';
import { createPool } from '../../apps/server/src/platform/database/pool.ts';
import { prepareRoles } from '../../apps/server/src/platform/database/roles.ts';
import { repositoryRoot } from '../../apps/server/src/platform/repository-root.ts';
import { expectFoldIsProjection } from './support/compare.ts';
import { databaseUrl } from './support/database.ts';
import { PASSWORD } from './support/plant.ts';

const folder = join(repositoryRoot(), 'tests', 'releases', 'backups');
const backups = readdirSync(folder).filter((name) => name.endsWith('.backup'));

async function withDatabase(work: (client: pg.Client, url: string) => Promise<void>): Promise<void> {
  const name = `release_${uuidv7().replaceAll('-', '')}`;
  const server = new pg.Client({ connectionString: inject('postgres') });
  await server.connect();
  await server.query(`CREATE DATABASE ${name}`);
  const url = databaseUrl(inject('postgres'), name);
  const client = new pg.Client({ connectionString: url });
  await client.connect();
  try {
    await work(client, url);
  } finally {
    await client.end();
    await server.query(`DROP DATABASE ${name} WITH (FORCE)`);
    await server.end();
  }
}

describe.each(backups)('the data of release %s', (name) => {
  const file = join(folder, name);

  it('is restored, migrated forward, and verifies', () =>
    withDatabase(async (client) => {
      const { head } = await readBackup(file);
      const { verified, migratedForward } = await restoreBackup(client, file);
      expect(verified).toMatchObject({ problems: 0, jointsFolded: 6 });
      const known = head.migrations.map((migration) => migration.name);
      expect([...known, ...migratedForward].sort()).toEqual(migrationFiles().map((migration) => migration.name));
      const { rows } = await client.query("SELECT stream_id FROM stream_head WHERE kind = 'shutdown'");
      const read = await expectFoldIsProjection(client, rows[0].stream_id);
      const stages = [...read.joints.values()].map(({ tag, makes }) => [tag, makes[0]?.stage]).sort();
      expect(stages).toEqual([
        ['R-1', 'proven'],
        ['R-2', 'tight'],
        ['R-3', 'part-tight'],
        ['R-4', 'nipped-up'],
        ['R-5', 'planned'],
        ['R-6', 'planned'],
      ]);
    }));

  it('is migrated where it stands, as the next start does it', () =>
    withDatabase(async (client, url) => {
      const { head } = await readBackup(file);
      const known = new Set(head.migrations.map((migration) => migration.name));
      const ofThen = migrationFiles().filter((migration) => known.has(migration.name));
      expect((await restoreBackup(client, file, ofThen)).migratedForward).toEqual([]);
      expect(await migrate(url)).toEqual(
        migrationFiles()
          .map((migration) => migration.name)
          .filter((migration) => !known.has(migration)),
      );
      expect(await verifyDatabase(client, true)).toMatchObject({ problems: 0, jointsFolded: 6 });
    }));

  it('keeps no address of a person who was erased then', () =>
    withDatabase(async (client) => {
      await restoreBackup(client, file);
      const { rows } = await client.query(
        'SELECT email, secret_hash FROM account JOIN person USING (site_id, person_id) WHERE erased_at IS NOT NULL',
      );
      expect(rows).toEqual([{ email: expect.stringMatching(/@erased\.invalid$/), secret_hash: '' }]);
    }));

  it('goes on in this release: people sign in and record', () =>
    withDatabase(async (client, url) => {
      await restoreBackup(client, file);
      const { appRole } = await prepareRoles(client);
      const db = createPool(url, { size: 4, role: appRole ?? undefined });
      const app = await createApp({ db, version: 'test', clock: () => new Date(), warnings: [] });
      await app.listen({ port: 0, host: '127.0.0.1' });
      try {
        const { rows } = await client.query("SELECT email FROM account WHERE email LIKE 'ina.spector%'");
        const agent = supertest.agent(app.server);
        const me = await agent.post('/api/v1/session').send({ email: rows[0].email, password: PASSWORD }).expect(200);
        const shutdownId: string = me.body.shutdowns[0].shutdownId;
        const joint = await client.query("SELECT joint_id, version FROM joint WHERE tag = 'R-3'");
        const eventId = uuidv7();
        const answer = await agent.post(`/api/v1/shutdowns/${shutdownId}/commands/hold-placed`).send({
          eventId,
          v: 1,
          subjectId: joint.rows[0].joint_id,
          deviceTime: new Date().toISOString(),
          payload: { holdId: uuidv7(), reason: 'Drawing asked about', releasedBy: 'engineer' },
        });
        expect(answer.body).toMatchObject({ eventId, disposition: 'applied', version: joint.rows[0].version + 1 });
        await expectFoldIsProjection(client, shutdownId);
      } finally {
        await app.close();
        db.on('remove', (each) => each.on('error', () => {}));
        await db.end();
      }
    }));
});

it('there is the data of one release at least', () => {
  expect(backups.length).toBeGreaterThan(0);
});
