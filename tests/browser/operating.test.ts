import type { Page } from 'playwright-core';
import { uuidv7 } from 'uuidv7';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { noteUpkeep } from '../../apps/server/src/features/operating/upkeep.ts';
import { BATCH_JOB } from '../../apps/server/src/features/recording/batch-job.ts';
import { inTransaction } from '../../apps/server/src/platform/database/pool.ts';
import { startJob } from '../../apps/server/src/platform/jobs/queue.ts';
import { accepted, PASSWORD, siteCommand } from '../api/support/plant.ts';
import { desk, phone } from './support/gallery.ts';
import { openRunningPlant, picture, type RunningPlant } from './support/running-plant.ts';

let running: RunningPlant;
let page: Page;

beforeAll(async () => {
  running = await openRunningPlant();
  await trouble();
  page = await running.signIn(running.shutdown.plant.administrator, desk);
});
afterAll(() => running?.close());

/** Besides the warning of a server reached with an all-powerful role: a job that fails, a person locked out, one who left, a backup in the night and a verification that found something. */
async function trouble(): Promise<void> {
  const { plant, technician, mate } = running.shutdown;
  const { db, administrator } = plant;
  const { rows } = await db.query('SELECT site_id FROM site');
  await startJob(db, {
    siteId: rows[0].site_id,
    jobId: uuidv7(),
    shutdownId: null,
    kind: BATCH_JOB,
    total: 1,
    input: { accountId: uuidv7(), hash: '', batch: {} },
    startedBy: administrator.accountId,
  });
  const wrong = { email: technician.email, password: 'not this one at all' };
  for (let count = 0; count < 6; count += 1) await administrator.agent.post('/api/v1/session').send(wrong).expect(401);
  accepted(await siteCommand(plant, administrator, 'account-closed', mate.accountId, { reason: 'Left' }));
  await db.query("UPDATE account SET closed_at = now() - interval '40 days' WHERE account_id = $1", [mate.accountId]);
  const at = new Date(Date.now() - 3_600_000);
  const note = (kind: 'backup' | 'verification', outcome: 'ok' | 'failed', details: object) =>
    inTransaction(db, (tx) => noteUpkeep(tx, { kind, outcome, startedAt: at, endedAt: at, details }));
  await note('backup', 'ok', { file: '/backups/seatwell-20270309T020000Z.backup', bytes: 3_210_000, events: 4192 });
  await note('verification', 'failed', {
    events: 4192,
    problems: 1,
    findings: ['Joint U41-P1-1 stands as proven in the register and folds to tight.'],
  });
}

it('the administrator finds what needs them, and does something about it', async () => {
  await page.getByRole('button', { name: /settings, sign out/i }).click();
  await page.getByRole('link', { name: 'The server' }).click();
  await page.getByRole('heading', { level: 1, name: '4 things need you' }).waitFor();
  await page.getByText('folds to tight').first().waitFor();
  await picture(page, 'server-trouble-desk');

  await page.getByRole('button', { name: 'Let Theo Technician sign in again' }).click();
  await page.getByRole('heading', { level: 1, name: '3 things need you' }).waitFor();
  const { plant, technician } = running.shutdown;
  await technician.agent.post('/api/v1/session').send({ email: technician.email, password: PASSWORD }).expect(200);

  const failed = page.getByRole('row', { name: /Recording of a long list/ });
  await failed.getByText('The account that started this was closed.').waitFor();
  const { rows } = await plant.db.query("SELECT ended_at FROM job WHERE state = 'failed'");
  await failed.getByRole('button', { name: 'Try the job Recording of a long list again' }).click();
  await expect
    .poll(async () => (await plant.db.query("SELECT ended_at FROM job WHERE state = 'failed'")).rows[0]?.ended_at)
    .not.toEqual(rows[0].ended_at);
});

it('sets how long names of those who left are kept, and finds them on a phone as well', async () => {
  await page.getByRole('button', { name: 'Change', exact: true }).click();
  await page.getByLabel(/Days after which those who left/).fill('30');
  await page.getByRole('button', { name: 'Save' }).click();
  await page.getByRole('link', { name: 'Mara Mate' }).waitFor();
  const small = await running.signIn(running.shutdown.plant.administrator, phone);
  await small.goto(`${running.origin}/site/server`);
  await small.getByRole('link', { name: 'Mara Mate' }).waitFor();
  expect(await small.evaluate(() => document.documentElement.scrollWidth <= window.innerWidth)).toBe(true);
  await picture(small, 'server-trouble-phone');
});

it('is nobody else’s page', async () => {
  const other = await running.signIn(running.shutdown.coordinator, desk);
  await other.goto(`${running.origin}/site/server`);
  await other.getByText(/not among what your roles/).waitFor();
});
