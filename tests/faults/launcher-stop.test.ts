import { expect, test } from 'vitest';
import type { Checkout } from './support/checkout.ts';
import { checkouts } from './support/fixture.ts';
import {
  postgresLog,
  postgresProcesses,
  runningPostmaster,
  signalPostgres,
  withDatabase,
} from './support/postgres-processes.ts';
import { launch, type Seatwell, start, stop } from './support/seatwell.ts';
import { openRequest, refusesConnections } from './support/slow-requests.ts';

const makeCheckout = checkouts();
const recovery = 'automatic recovery in progress';

/** 20 requests under way: the database hangs, so none can be answered yet. */
async function twentyRequestsUnderWay(checkout: Checkout, url: string) {
  // The pool's first connection must exist before the database hangs.
  expect((await fetch(`${url}/api/v1/health`)).status).toBe(200);
  signalPostgres(checkout, 'SIGSTOP');
  const requests = await Promise.all(Array.from({ length: 20 }, () => openRequest(`${url}/api/v1/health`)));
  // An answer that needs no database comes after the server has read what was sent before.
  await (await openRequest(`${url}/api/v1/no-such-thing`)).answer;
  expect(requests.filter((request) => request.answered())).toEqual([]);
  return requests;
}

const ways: Record<string, (seatwell: Seatwell) => void> = {
  'Ctrl-C': ({ process }) => process.kill('SIGINT'),
  // npm passes on the Ctrl-C that the terminal has already given to the whole group.
  'Ctrl-C under npm, which arrives twice,': ({ process }) => {
    process.kill('SIGINT');
    setTimeout(() => process.kill('SIGINT'), 50);
  },
  'the stop of a service manager (SIGTERM)': ({ process }) => process.kill('SIGTERM'),
  'a closed terminal (SIGHUP)': ({ process }) => process.kill('SIGHUP'),
};

test.each(Object.keys(ways))('%s with 20 requests under way answers them all and stops in order', async (way) => {
  const checkout = await makeCheckout();
  const seatwell = await start(checkout);
  const requests = await twentyRequestsUnderWay(checkout, seatwell.url);

  ways[way]?.(seatwell);
  await refusesConnections(seatwell.url);
  expect(requests.filter((request) => request.answered())).toEqual([]);
  await new Promise((resolve) => setTimeout(resolve, 100));
  signalPostgres(checkout, 'SIGCONT');

  const statuses = await Promise.all(requests.map((request) => request.answer));
  expect(statuses).toEqual(Array.from({ length: 20 }, () => 200));
  expect(await seatwell.ended).toEqual({ code: 0, signal: null });
  expect(postgresProcesses(checkout)).toEqual([]);

  const again = await start(checkout);
  expect((await stop(again)).code).toBe(0);
  expect(postgresLog(checkout)).toContain('database system was shut down at');
  expect(postgresLog(checkout)).not.toContain(recovery);
});

test('a second Ctrl-C a while later ends at once; PostgreSQL still stops in order by itself', async () => {
  const checkout = await makeCheckout();
  const seatwell = await start(checkout);
  const requests = await twentyRequestsUnderWay(checkout, seatwell.url);

  seatwell.process.kill('SIGINT');
  await seatwell.logged('SIGINT');
  await new Promise((resolve) => setTimeout(resolve, 1_200));
  seatwell.process.kill('SIGINT');

  expect(await seatwell.ended).toEqual({ code: 130, signal: null });
  await expect(requests[0]?.answer).rejects.toThrow();
  signalPostgres(checkout, 'SIGCONT');
  const again = await start(checkout);
  expect((await stop(again)).code).toBe(0);
  expect(postgresLog(checkout)).not.toContain(recovery);
});

test('Ctrl-C during the first start stops in order, and the next start goes through', async () => {
  const checkout = await makeCheckout();
  const seatwell = launch(checkout);
  await seatwell.logged('Creating the database');
  expect(await stop(seatwell)).toEqual({ code: 0, signal: null });
  expect(postgresProcesses(checkout)).toEqual([]);

  expect((await stop(await start(checkout))).code).toBe(0);
});

/** Commits a row in a schema that is not the app's. */
async function keep(checkout: Checkout, tag: string): Promise<void> {
  await withDatabase(checkout, async (client) => {
    await client.query('CREATE SCHEMA marks CREATE TABLE kept (tag text)');
    await client.query('INSERT INTO marks.kept VALUES ($1)', [tag]);
  });
}

const kept = (checkout: Checkout) =>
  withDatabase(checkout, async (client) => {
    const { rows } = await client.query<{ tag: string }>('SELECT tag FROM marks.kept');
    return rows.map(({ tag }) => tag);
  });

test('after kill -9 the next start stops the orphaned PostgreSQL in order, says so, and keeps the data', async () => {
  const checkout = await makeCheckout();
  const killed = await start(checkout);
  const orphan = runningPostmaster(checkout);
  await keep(checkout, 'L-1001-F1');
  killed.process.kill('SIGKILL');
  await killed.ended;
  expect(postgresProcesses(checkout)).toContain(orphan);

  const next = await start(checkout);
  expect(next.log()).toContain(`left its PostgreSQL running (process ${orphan})`);
  expect(postgresProcesses(checkout)).not.toContain(orphan);
  expect(await kept(checkout)).toEqual(['L-1001-F1']);
  expect((await stop(next)).code).toBe(0);
  expect(postgresLog(checkout)).not.toContain(recovery);
});

test('after kill -9 of Seatwell and PostgreSQL the next start recovers what was committed, and says so', async () => {
  const checkout = await makeCheckout();
  const killed = await start(checkout);
  await keep(checkout, 'L-1001-F1');
  killed.process.kill('SIGKILL');
  signalPostgres(checkout, 'SIGKILL');
  await killed.ended;

  const next = await start(checkout);
  expect(next.log()).toContain('has recovered; committed work is kept');
  expect(await kept(checkout)).toEqual(['L-1001-F1']);
  expect((await stop(next)).code).toBe(0);
  expect(postgresLog(checkout)).toContain(recovery);
});

test('when PostgreSQL alone is killed, Seatwell ends with a reason instead of running without it', async () => {
  const checkout = await makeCheckout();
  const seatwell = await start(checkout);
  await keep(checkout, 'L-1001-F1');
  process.kill(runningPostmaster(checkout), 'SIGKILL');

  expect(await seatwell.ended).toEqual({ code: 1, signal: null });
  expect(seatwell.log()).toContain('PostgreSQL ended by itself (SIGKILL)');
  const next = await start(checkout);
  expect(await kept(checkout)).toEqual(['L-1001-F1']);
  expect((await stop(next)).code).toBe(0);
});
