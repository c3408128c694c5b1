import { mkdirSync, readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import pg from 'pg';
import { afterAll, expect, test } from 'vitest';
import { expectFoldIsProjection } from '../api/support/compare.ts';
import { databaseUrl } from '../api/support/database.ts';
import { startTestPostgres } from '../api/support/database-server.ts';
import { checkouts } from './support/fixture.ts';
import { postgresProcesses, withDatabase } from './support/postgres-processes.ts';
import { RecordingClient } from './support/recording-client.ts';
import { start, stop } from './support/seatwell.ts';
import { listed, workUntilBroken } from './support/some-work.ts';
import { upkeep } from './support/upkeep.ts';

const makeCheckout = checkouts();
const external = await startTestPostgres();
afterAll(() => external.stop());

/** An empty database of an ordinary role, which owns it and nothing else, on a PostgreSQL of the plant's own. */
async function ownedDatabase(name: string): Promise<string> {
  const client = new pg.Client({ connectionString: external.superuserUrl });
  await client.connect();
  await client.query(`CREATE ROLE ${name} LOGIN PASSWORD 'of the plant'`);
  await client.query(`CREATE DATABASE ${name} OWNER ${name}`);
  await client.end();
  const url = new URL(databaseUrl(external.superuserUrl, name));
  url.username = name;
  url.password = 'of the plant';
  return url.href;
}

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

test('A backup of the embedded database moves to a PostgreSQL of the plant’s own, and back', async () => {
  const checkout = await makeCheckout();
  const seatwell = await start(checkout);
  const client = await RecordingClient.begin(seatwell.url);
  for (let count = 0; count < 5; count += 1) await client.must(listed(client).command);
  const file = join(checkout.folder, 'embedded.backup');
  const written = await upkeep(checkout, 'backup', [file]);
  expect(written, written.log).toMatchObject({ code: 0 });
  expect((await stop(seatwell)).code).toBe(0);

  const plant = { DATABASE_URL: await ownedDatabase('plant') };
  const moved = await upkeep(checkout, 'restore', [file], plant);
  expect(moved, moved.log).toMatchObject({ code: 0, said: { problems: 0, jointsFolded: 5 } });
  const there = await start(checkout, undefined, plant);
  const session = await fetch(`${there.url}/api/v1/session`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ email: 'ada@plant.example', password: 'a long test secret' }),
  });
  expect(session.status).toBe(200);
  const nightly = await upkeep(checkout, 'verify', ['--all'], plant);
  expect(nightly, nightly.log).toMatchObject({ code: 0, said: { problems: 0, jointsFolded: 5 } });
  const night = join(checkout.folder, 'nights');
  mkdirSync(night);
  const second = await upkeep(checkout, 'backup', [night], plant);
  expect(second, second.log).toMatchObject({ code: 0 });
  expect((await stop(there)).code).toBe(0);
  expect(readdirSync(night)).toEqual([expect.stringMatching(/^seatwell-\d{8}T\d{9}Z\.backup$/)]);

  const other = await makeCheckout();
  const back = await upkeep(other, 'restore', [join(night, readdirSync(night)[0] ?? '')]);
  expect(back, back.log).toMatchObject({ code: 0, said: { problems: 0 } });
  const headOf = (said: Record<string, unknown> | null) =>
    ((said?.['heads'] ?? []) as Head[]).find(({ streamId }) => streamId === client.shutdownId);
  expect(headOf(written.said)?.sequence).toBeGreaterThan(5);
  expect(headOf(second.said)).toEqual(headOf(written.said));
});
