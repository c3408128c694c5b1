import { createPublicKey } from 'node:crypto';
import { chmodSync, copyFileSync, existsSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { checkSignedHead } from '../../apps/server/record-verifier.mjs';
import { makeKeyFile } from '../../apps/server/src/platform/record-key/key-file.ts';
import { checkouts } from './support/fixture.ts';
import { RecordingClient } from './support/recording-client.ts';
import { sharedDatabases } from './support/replicas.ts';
import { start, stop } from './support/seatwell.ts';
import { upkeep } from './support/upkeep.ts';

const makeCheckout = checkouts();
const openDatabase = sharedDatabases();

/** The signed head as one process gives it, and what that process says of its health. */
async function headFrom(url: string, client: RecordingClient, cookie = client.cookie) {
  const headers = { cookie };
  const head = await fetch(`${url}/api/v1/shutdowns/${client.shutdownId}/record/signed-head`, { headers });
  const pem = await fetch(`${url}/api/v1/record-keys/public.pem`, { headers });
  const health = (await (await fetch(`${url}/api/v1/health`)).json()) as { warnings: string[] };
  return { status: head.status, note: await head.text(), pem: await pem.text(), health: health.warnings.join() };
}

test('the key of the data folder is in no backup: brought after a restore it signs again, or it is changed', async () => {
  const checkout = await makeCheckout();
  const seatwell = await start(checkout);
  const key = join(checkout.dataFolder, 'record-key.pem');
  expect(statSync(key).mode & 0o777).toBe(0o600);
  const client = await RecordingClient.begin(seatwell.url);
  const before = await headFrom(client.url, client);
  expect(before.status, before.note).toBe(200);
  expect(before.health).not.toContain('not signed');
  const old = createPublicKey(before.pem);
  expect(checkSignedHead(before.note, [old])).toMatchObject({ streamId: client.shutdownId });
  const file = join(checkout.folder, 'night.backup');
  expect(await upkeep(checkout, 'backup', [file])).toMatchObject({ code: 0 });
  expect((await stop(seatwell)).code).toBe(0);

  const other = await makeCheckout();
  const restored = await upkeep(other, 'restore', [file]);
  expect(restored, restored.log).toMatchObject({ code: 0 });
  const brought = join(other.dataFolder, 'record-key.pem');
  expect(restored.said?.['recordKey']).toContain(`Bring its file to ${brought}`);
  const server = await start(other);
  expect(existsSync(brought)).toBe(false);
  const session = await fetch(`${server.url}/api/v1/session`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ email: 'ada@plant.example', password: 'a long test secret' }),
  });
  const cookie = (session.headers.get('set-cookie') ?? '').split(';')[0];
  const missing = await headFrom(server.url, client, cookie);
  expect(missing).toMatchObject({ status: 503, health: expect.stringContaining('not signed') });
  expect(missing.note).toContain(`Bring its file to ${brought}`);

  // Brought while the server runs, it signs.
  copyFileSync(key, brought);
  const back = await headFrom(server.url, client, cookie);
  expect(checkSignedHead(back.note, [old])).not.toHaveProperty('wrong');

  // Changed while the server runs, the next one signs, and the command names both.
  const changed = await upkeep(other, 'record-key', ['change']);
  expect(changed, changed.log).toMatchObject({ code: 0 });
  expect(changed.said?.['keys']).toHaveLength(2);
  expect(readFileSync(brought, 'utf8')).not.toBe(readFileSync(key, 'utf8'));
  const after = await headFrom(server.url, client, cookie);
  expect(checkSignedHead(after.note, [old])).toMatchObject({ byAnother: true });
  expect(checkSignedHead(after.note, [createPublicKey(after.pem)])).not.toHaveProperty('wrong');
  expect((await stop(server)).code).toBe(0);
});

test('two processes on one database sign with the same file, and one with another key refuses', async () => {
  const database = await openDatabase();
  const given = join(database.checkout.folder, 'given.pem');
  const stranger = join(database.checkout.folder, 'stranger.pem');
  for (const path of [given, stranger]) makeKeyFile({ path, given: false }, 'replace');
  const withKey = (path: string) => database.start({ SEATWELL_RECORD_KEY: path });
  const one = await withKey(given);
  const client = await RecordingClient.begin(one.url);
  const first = await headFrom(one.url, client);
  const other = await withKey(given);
  const same = await headFrom(other.url, client);
  expect(checkSignedHead(same.note, [createPublicKey(first.pem)])).not.toHaveProperty('wrong');
  expect((await stop(other)).code).toBe(0);

  const wrong = await withKey(stranger);
  const refused = await headFrom(wrong.url, client);
  expect(refused).toMatchObject({ status: 503, health: expect.stringContaining('not signed') });
  expect(refused.note).toContain('Give every process the file with the database’s key');
  expect((await stop(wrong)).code).toBe(0);

  const none = await database.start();
  const unsigned = await headFrom(none.url, client);
  expect(unsigned.status).toBe(503);
  expect(unsigned.note).toContain('SEATWELL_RECORD_KEY');
  expect(existsSync(join(database.checkout.dataFolder, 'record-key.pem'))).toBe(false);
  for (const replica of [none, one]) expect((await stop(replica)).code).toBe(0);

  chmodSync(given, 0o644);
  await expect(withKey(given)).rejects.toThrow('chmod 600');
});
