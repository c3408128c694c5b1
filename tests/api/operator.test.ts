import type { OperatorStatus } from '@seatwell/contract';
import supertest from 'supertest';
import { uuidv7 } from 'uuidv7';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { noteUpkeep } from '../../apps/server/src/features/operating/upkeep.ts';
import { BATCH_JOB } from '../../apps/server/src/features/recording/batch-job.ts';
import { inTransaction } from '../../apps/server/src/platform/database/pool.ts';
import { startJob } from '../../apps/server/src/platform/jobs/queue.ts';
import { accepted, engage, openPlant, PASSWORD, type Plant, siteCommand } from './support/plant.ts';

let plant: Plant;
beforeAll(async () => {
  plant = await openPlant();
});
afterAll(() => plant.close());

const operator = () => plant.administrator.agent;
const status = async (): Promise<OperatorStatus> => (await operator().get('/api/v1/operator/status').expect(200)).body;
const signIn = (email: string, password: string) =>
  supertest(plant.app.server).post('/api/v1/session').send({ email, password });

describe('the operator’s page', () => {
  it('tells version, database and the head of each stream', async () => {
    const { version, database, streams } = await status();
    expect(version).toBe('test');
    expect(Number.parseInt(database.version, 10)).toBeGreaterThanOrEqual(15);
    expect(database.size_bytes).toBeGreaterThan(1_000_000);
    expect(database.role).toMatch(/_app$/);
    expect(database.lastMigration).toMatch(/^\d{14}_/);
    const { rows } = await plant.db.query("SELECT sequence, encode(root, 'hex') AS root FROM stream_head");
    expect(streams).toMatchObject([{ kind: 'site', name: 'Test site', ...rows[0] }]);
  });

  it('tells the last run of each kind of upkeep, and what a verification found', async () => {
    expect((await status()).upkeep).toEqual([]);
    const note = (kind: 'backup' | 'verification', outcome: 'ok' | 'failed', minute: number, details: object) =>
      inTransaction(plant.db, (tx) =>
        noteUpkeep(tx, {
          kind,
          outcome,
          startedAt: new Date(Date.UTC(2027, 2, 1, 2, minute)),
          endedAt: new Date(Date.UTC(2027, 2, 1, 2, minute + 1)),
          details,
        }),
      );
    expect(await note('backup', 'ok', 10, { file: '/backups/one', bytes: 2048, events: 12 })).toBe(true);
    await note('backup', 'ok', 5, { file: '/backups/earlier', bytes: 1024, events: 11 });
    await note('verification', 'failed', 20, {
      events: 12,
      problems: 1,
      findings: ['Joint P-1 folds to another state.'],
    });
    expect((await status()).upkeep).toMatchObject([
      { kind: 'backup', outcome: 'ok', file: '/backups/one', size_bytes: 2048, events: 12, problems: null },
      { kind: 'verification', outcome: 'failed', problems: 1, findings: ['Joint P-1 folds to another state.'] },
    ]);
  });

  it('tells why a job failed, and tries it again', async () => {
    const { rows } = await plant.db.query('SELECT site_id FROM site');
    const jobId = uuidv7();
    await startJob(plant.db, {
      siteId: rows[0].site_id,
      jobId,
      shutdownId: null,
      kind: BATCH_JOB,
      total: 1,
      input: { accountId: uuidv7(), hash: '', batch: {} },
      startedBy: plant.administrator.accountId,
    });
    const failed = async () =>
      (await status()).jobs.recent.find((job) => job.jobId === jobId && job.state === 'failed');
    await expect.poll(failed, { timeout: 20_000 }).toMatchObject({
      kind: BATCH_JOB,
      problem: 'The account that started this was closed.',
      startedBy: { name: 'Ada Ministrator' },
    });
    const before = await failed();
    expect((await status()).jobs.failed).toBe(1);
    await operator().post(`/api/v1/operator/jobs/${jobId}/retry`).expect(204);
    await expect
      .poll(async () => (await failed())?.endedAt ?? before?.endedAt, { timeout: 20_000 })
      .not.toBe(before?.endedAt);
    await operator().post(`/api/v1/operator/jobs/${uuidv7()}/retry`).expect(404);
  });
});

describe('sign-in throttling', () => {
  it('shows a locked account, and lets its person sign in again', async () => {
    const { email, accountId, personId } = await engage(plant, 'technician', 'Theo Technician');
    for (let wrong = 0; wrong < 6; wrong += 1) await signIn(email, 'not this one at all').expect(401);
    await signIn(email, PASSWORD).expect(423);
    expect((await status()).signIn.locked).toMatchObject([
      { accountId, email, person: { personId, name: 'Theo Technician' } },
    ]);
    await operator().post(`/api/v1/operator/accounts/${accountId}/unlock`).expect(204);
    await signIn(email, PASSWORD).expect(200);
    expect((await status()).signIn.locked).toEqual([]);
    await operator().post(`/api/v1/operator/accounts/${accountId}/unlock`).expect(404);
  });

  it('slows an address down from which many wrong secrets came, and shows it', async () => {
    const { email } = await engage(plant, 'technician', 'Mara Mate');
    const counted = async () => (await status()).signIn.addresses[0];
    const already = (await counted())?.failures ?? 0;
    for (let wrong = already; wrong < 100; wrong += 1)
      await signIn(`nobody.${wrong}@plant.example`, 'not this one at all').expect(401);
    const refused = await signIn(email, PASSWORD).expect(429);
    expect(refused.body.detail).toMatch(/100 wrong secrets came from .* ask an administrator/);
    const address = await counted();
    expect(address).toMatchObject({ failures: 100 });
    expect(address?.blockedUntil).not.toBeNull();
    await operator().post('/api/v1/operator/addresses/unlock').send({ address: address?.address }).expect(204);
    await signIn(email, PASSWORD).expect(200);
    expect((await status()).signIn.addresses).toEqual([]);
  });

  it('forgets addresses after the days that the site keeps them', async () => {
    await signIn('nobody@plant.example', 'not this one at all').expect(401);
    await plant.db.query("UPDATE sign_in_address SET last_at = now() - interval '8 days', address = '192.0.2.7'");
    expect((await status()).signIn.addresses).toHaveLength(1);
    const retention = { sessionHours: 10, signInDays: 7, leaverDays: null };
    await operator().put('/api/v1/operator/retention').send(retention).expect(200);
    expect((await status()).signIn.addresses).toEqual([]);
  });
});

describe('what is kept about people', () => {
  it('ends sessions after the hours that the site sets', async () => {
    const { email } = await engage(plant, 'technician', 'Short Shift');
    const retention = { sessionHours: 1, signInDays: 30, leaverDays: null };
    expect((await operator().put('/api/v1/operator/retention').send(retention).expect(200)).body).toEqual(retention);
    await signIn(email, PASSWORD).expect(200);
    const { rows } = await plant.db.query(
      'SELECT extract(epoch FROM expires_at - started_at)::int AS seconds FROM session ORDER BY started_at DESC LIMIT 1',
    );
    expect(Math.abs(rows[0].seconds - 3600)).toBeLessThan(60);
    await operator()
      .put('/api/v1/operator/retention')
      .send({ ...retention, sessionHours: 0 })
      .expect(400);
  });

  it('names those who left long ago, until they are erased', async () => {
    const leaver = await engage(plant, 'technician', 'Lena Left');
    const stayer = await engage(plant, 'technician', 'Stan Stays');
    accepted(await siteCommand(plant, plant.administrator, 'account-closed', leaver.accountId, { reason: 'Left' }));
    await plant.db.query("UPDATE account SET closed_at = now() - interval '40 days' WHERE account_id = $1", [
      leaver.accountId,
    ]);
    const keep = (leaverDays: number | null) =>
      operator().put('/api/v1/operator/retention').send({ sessionHours: 14, signInDays: 30, leaverDays }).expect(200);
    await keep(null);
    expect((await status()).leavers).toEqual([]);
    await keep(60);
    expect((await status()).leavers).toEqual([]);
    await keep(30);
    expect((await status()).leavers).toMatchObject([{ person: { personId: leaver.personId, name: 'Lena Left' } }]);
    accepted(await siteCommand(plant, plant.administrator, 'person-erased', leaver.personId, { reason: 'Left' }));
    expect((await status()).leavers).toEqual([]);
    expect(stayer.personId).not.toBe(leaver.personId);
  });
});
