import { statSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { expectFoldIsProjection } from '../api/support/compare.ts';
import { checkouts } from './support/fixture.ts';
import { postgresProcesses, withDatabase } from './support/postgres-processes.ts';
import { RecordingClient } from './support/recording-client.ts';
import { start, stop } from './support/seatwell.ts';
import { workUntilBroken } from './support/some-work.ts';
import { upkeep } from './support/upkeep.ts';

const makeCheckout = checkouts();

interface Head {
  readonly streamId: string;
  readonly sequence: number;
  readonly root: string;
}

test('A backup taken while eight people record is restored elsewhere: same heads, same joints, and people sign in', async () => {
  const checkout = await makeCheckout();
  const seatwell = await start(checkout);
  const client = await RecordingClient.begin(seatwell.url);
  const file = join(checkout.folder, 'first.backup');
  let backup: ReturnType<typeof upkeep> | undefined;
  let answers = 0;
  const sent = await workUntilBroken(client, 8, (count) => {
    answers = count;
    if (count === 150)
      backup = upkeep(checkout, 'backup', [file]).finally(() => {
        // Work goes on to the end of the backup and is then broken off.
        client.url = 'http://127.0.0.1:1';
      });
  });
  const written = await backup;
  expect(written, written?.log).toMatchObject({ code: 0 });
  expect(sent.acknowledged.length).toBeGreaterThan(100);
  expect(answers).toBeGreaterThan(150);
  expect(statSync(file).mode & 0o777).toBe(0o600);
  const heads = written?.said?.['heads'] as Head[];
  const head = heads.find(({ streamId }) => streamId === client.shutdownId);
  const now = await withDatabase(checkout, (database) =>
    database.query('SELECT sequence::int AS sequence FROM stream_head WHERE stream_id = $1', [client.shutdownId]),
  );
  // The backup saw the middle of the work, not its end.
  expect(head?.sequence).toBeLessThan(now.rows[0].sequence);
  expect((await stop(seatwell)).code).toBe(0);

  // A second backup never replaces the first, and one of a stopped server starts and stops the database by itself.
  const again = await upkeep(checkout, 'backup', [file]);
  expect(again.code).toBe(1);
  expect(again.log).toContain('is there already');
  const whole = join(checkout.folder, 'whole.backup');
  expect((await upkeep(checkout, 'backup', [whole])).code).toBe(0);
  expect(postgresProcesses(checkout)).toEqual([]);

  const verified = await upkeep(checkout, 'verify', [whole, '--all']);
  expect(verified, verified.log).toMatchObject({ code: 0, said: { problems: 0 } });
  expect(verified.said?.['jointsFolded']).toBeGreaterThan(20);

  const other = await makeCheckout();
  const restored = await upkeep(other, 'restore', [file]);
  expect(restored, restored.log).toMatchObject({ code: 0, said: { problems: 0, events: written?.said?.['events'] } });
  expect(restored.said?.['jointsFolded']).toBeGreaterThan(5);
  expect(postgresProcesses(other)).toEqual([]);

  const server = await start(other);
  const read = await withDatabase(other, (database) => expectFoldIsProjection(database, client.shutdownId));
  expect({ sequence: read.events.length, root: read.root }).toEqual({ sequence: head?.sequence, root: head?.root });
  const session = await fetch(`${server.url}/api/v1/session`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ email: 'ada@plant.example', password: 'a long test secret' }),
  });
  expect(session.status).toBe(200);
  // Those who were signed in where the backup was taken are not signed in here.
  const old = await fetch(`${server.url}/api/v1/session`, { headers: { cookie: client.cookie } });
  expect(old.status).toBe(401);

  // Into a database in use nothing is restored, running or stopped.
  const running = await upkeep(other, 'restore', [whole]);
  expect(running.code).toBe(1);
  expect(running.log).toContain('stop it first');
  expect((await stop(server)).code).toBe(0);
  const used = await upkeep(other, 'restore', [whole]);
  expect(used.code).toBe(1);
  expect(used.log).toContain('holds rows');
  const nightly = await upkeep(other, 'verify', []);
  expect(nightly, nightly.log).toMatchObject({ code: 0, said: { problems: 0 } });
});
