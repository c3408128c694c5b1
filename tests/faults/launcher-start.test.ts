import { existsSync, readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { checkouts } from './support/fixture.ts';
import { postgresLog, runningPostmaster, userOf, withDatabase } from './support/postgres-processes.ts';
import { start, stop } from './support/seatwell.ts';

const makeCheckout = checkouts();
const asRoot = process.getuid?.() === 0;

const modeOf = (path: string) => (statSync(path).mode & 0o777).toString(8);

test('--json prints exactly one line on standard output, and what it names answers', async () => {
  const seatwell = await start(await makeCheckout());

  const answer = await fetch(`${seatwell.url}/api/v1/health`);
  expect(answer.status).toBe(200);
  expect(await answer.json()).toMatchObject({ status: 'ok' });
  expect(await stop(seatwell)).toEqual({ code: 0, signal: null });

  expect(seatwell.standardOutput().split('\n')).toEqual([JSON.stringify({ url: seatwell.url, accounts: [] }), '']);
  expect(new URL(seatwell.url).hostname).toBe('127.0.0.1');
  expect(seatwell.log()).toContain('Creating the database');
});

test('in a private folder PostgreSQL runs without root and without the links of an install script', async () => {
  const checkout = await makeCheckout({ ownBinaries: true });
  expect(modeOf(join(checkout.folder, '..'))).toBe('700');

  const seatwell = await start(checkout);
  const uid = userOf(runningPostmaster(checkout));
  const staged = readdirSync(checkout.cacheFolder);
  expect((await fetch(`${seatwell.url}/api/v1/health`)).status).toBe(200);
  expect((await stop(seatwell)).code).toBe(0);

  if (asRoot) {
    // Another account cannot reach binaries below the private folder: a copy runs, the data stays.
    expect(uid).not.toBe(0);
    expect(staged).toEqual([expect.stringMatching(/^postgresql-18\./)]);
  } else {
    expect(uid).toBe(process.getuid?.());
    expect(staged).toEqual([]);
  }
  expect(existsSync(join(checkout.dataFolder, 'postgres', 'PG_VERSION'))).toBe(true);
  // No password file or other litter in the temporary folder.
  expect(readdirSync(checkout.temporaryFolder)).toEqual([]);

  const again = await start(checkout);
  expect(again.log()).not.toContain('Copying the PostgreSQL binaries');
  expect((await stop(again)).code).toBe(0);
});

test.each([
  ['unset, as in containers', {}],
  ['German', { LANG: 'de_DE.UTF-8', LC_ALL: 'de_DE.UTF-8' }],
])('text is UTF-8 and sorts by code point with LANG %s', async (_, environment) => {
  const checkout = await makeCheckout();
  const seatwell = await start(checkout, undefined, environment);

  const found = await withDatabase(checkout, async (client) => {
    const { rows } = await client.query(
      `SELECT current_setting('server_encoding') AS encoding, datlocprovider AS provider, datlocale AS locale,
              (SELECT array_agg(tag ORDER BY tag) FROM unnest(ARRAY['é', 'b', 'Z', 'a', 'ß']) AS tag) AS sorted,
              upper('é') AS upper
         FROM pg_database WHERE datname = current_database()`,
    );
    return rows[0];
  });
  expect(found).toEqual({
    encoding: 'UTF8',
    provider: 'b',
    locale: 'C.UTF-8',
    sorted: ['Z', 'a', 'b', 'ß', 'é'],
    upper: 'É',
  });
  await stop(seatwell);
});

test('the database is private: no TCP, a password, files for its user alone, every commit on disk', async () => {
  const checkout = await makeCheckout();
  const seatwell = await start(checkout);

  const settings = await withDatabase(checkout, async (client) => {
    const { rows } = await client.query<{ name: string; setting: string }>(
      `SELECT name, setting FROM pg_settings WHERE name IN ('listen_addresses', 'fsync', 'full_page_writes',
         'synchronous_commit', 'password_encryption', 'unix_socket_permissions')`,
    );
    return Object.fromEntries(rows.map(({ name, setting }) => [name, setting]));
  });
  expect(settings).toEqual({
    listen_addresses: '',
    fsync: 'on',
    full_page_writes: 'on',
    synchronous_commit: 'on',
    password_encryption: 'scram-sha-256',
    unix_socket_permissions: '0700',
  });
  await expect(withDatabase(checkout, async () => undefined, 'wrong')).rejects.toThrow(
    'password authentication failed',
  );
  expect(modeOf(checkout.dataFolder)).toBe('700');
  expect(modeOf(join(checkout.dataFolder, 'postgres'))).toBe('700');
  for (const file of ['database-password', 'postgres.log', 'seatwell.pid']) {
    expect(modeOf(join(checkout.dataFolder, file))).toBe('600');
  }
  await stop(seatwell);
});

test('a path too long for a socket address works and leaves no link behind', async () => {
  const checkout = await makeCheckout({ name: `${'deep '.repeat(12)}/${'down '.repeat(12)}checkout` });
  const seatwell = await start(checkout);

  expect((await fetch(`${seatwell.url}/api/v1/health`)).status).toBe(200);
  expect(readdirSync(checkout.temporaryFolder)).toEqual([expect.stringMatching(/^seatwell-/)]);
  expect((await stop(seatwell)).code).toBe(0);
  expect(readdirSync(checkout.temporaryFolder)).toEqual([]);
  expect(postgresLog(checkout)).toContain('database system is shut down');
});
