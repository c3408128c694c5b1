import { expect, test } from 'vitest';
import { expectFoldIsProjection } from '../api/support/compare.ts';
import type { Checkout } from './support/checkout.ts';
import { checkouts } from './support/fixture.ts';
import { runningPostmaster, signalPostgres, withDatabase } from './support/postgres-processes.ts';
import { type KeptCommand, RecordingClient } from './support/recording-client.ts';
import { type Seatwell, start, stop } from './support/seatwell.ts';
import { type Sent, workUntilBroken } from './support/some-work.ts';

const makeCheckout = checkouts();

/** How often each command is on record, once the projections were held against the fold of the stored bytes. */
async function timesRecorded(checkout: Checkout, client: RecordingClient): Promise<(command: KeptCommand) => number> {
  const read = await withDatabase(checkout, async (database) => {
    await database.query('SET ROLE seatwell_reader');
    return expectFoldIsProjection(database, client.shutdownId);
  });
  return ({ eventId }) => read.events.filter((event) => event.eventId === eventId).length;
}

const KILLS: Record<string, (seatwell: Seatwell, checkout: Checkout) => void> = {
  'the server': (seatwell) => seatwell.process.kill('SIGKILL'),
  PostgreSQL: (_seatwell, checkout) => process.kill(runningPostmaster(checkout), 'SIGKILL'),
  'both at once': (seatwell, checkout) => {
    seatwell.process.kill('SIGKILL');
    signalPostgres(checkout, 'SIGKILL');
  },
};

test.each(Object.keys(KILLS))(
  'kill -9 of %s in the middle of the work: what was acknowledged is there once, the rest once or not at all',
  async (what) => {
    const checkout = await makeCheckout();
    const killed = await start(checkout);
    const client = await RecordingClient.begin(killed.url);
    let dead = false;
    const sent: Sent = await workUntilBroken(client, 8, (answers) => {
      if (answers < 300 || dead) return;
      dead = true;
      KILLS[what]?.(killed, checkout);
    });
    await killed.ended;
    expect(sent.acknowledged.length).toBeGreaterThan(200);
    expect(sent.refused.length).toBeGreaterThan(10);
    expect(sent.open.length).toBeGreaterThan(0);

    const next = await start(checkout);
    client.url = next.url;
    const times = await timesRecorded(checkout, client);
    for (const command of sent.acknowledged) expect(times(command)).toBe(1);
    for (const command of sent.refused) expect(times(command)).toBe(0);
    for (const command of sent.open) expect([0, 1]).toContain(times(command));

    // Sent again by those who never heard: once on record, or refused by what others recorded meanwhile.
    const again = await Promise.all(sent.open.map((command) => client.send(command)));
    const after = await timesRecorded(checkout, client);
    for (const [index, command] of sent.open.entries()) {
      expect([200, 409]).toContain(again[index]);
      expect(after(command)).toBe(again[index] === 200 ? 1 : 0);
    }
    expect((await stop(next)).code).toBe(0);
  },
);
