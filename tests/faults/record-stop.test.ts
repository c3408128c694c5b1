import { expect, test } from 'vitest';
import { expectFoldIsProjection } from '../api/support/compare.ts';
import { checkouts } from './support/fixture.ts';
import { postgresLog, postgresProcesses, signalPostgres, withDatabase } from './support/postgres-processes.ts';
import { RecordingClient } from './support/recording-client.ts';
import { start, stop } from './support/seatwell.ts';
import { openRequest, refusesConnections } from './support/slow-requests.ts';
import { listed } from './support/some-work.ts';

const makeCheckout = checkouts();

test('Ctrl-C with 20 commands in flight: each is acknowledged, and is there after the next start without recovery', async () => {
  const checkout = await makeCheckout();
  const seatwell = await start(checkout);
  const client = await RecordingClient.begin(seatwell.url);
  const commands = Array.from({ length: 20 }, () => listed(client).command);

  // The database hangs, so that none of them can be answered yet.
  signalPostgres(checkout, 'SIGSTOP');
  const requests = await Promise.all(
    commands.map(({ path, body }) => openRequest(`${seatwell.url}${path}`, { cookie: client.cookie, body })),
  );
  // An answer that needs no database comes after the server has read what was sent before.
  await (await openRequest(`${seatwell.url}/api/v1/no-such-thing`)).answer;
  seatwell.process.kill('SIGINT');
  await refusesConnections(seatwell.url);
  expect(requests.filter((request) => request.answered())).toEqual([]);
  signalPostgres(checkout, 'SIGCONT');

  const statuses = await Promise.all(requests.map((request) => request.answer));
  expect(statuses).toEqual(Array.from({ length: 20 }, () => 200));
  expect(await seatwell.ended).toEqual({ code: 0, signal: null });
  expect(postgresProcesses(checkout)).toEqual([]);

  const again = await start(checkout);
  const read = await withDatabase(checkout, (database) => expectFoldIsProjection(database, client.shutdownId));
  const recorded = read.events.map((event) => event.eventId);
  for (const { eventId } of commands) expect(recorded.filter((id) => id === eventId)).toHaveLength(1);
  expect((await stop(again)).code).toBe(0);
  expect(postgresLog(checkout)).not.toContain('automatic recovery in progress');
});
