import { X509Certificate } from 'node:crypto';
import { chmodSync, readdirSync, readFileSync, rmSync, statSync } from 'node:fs';
import { hostname } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import type { Checkout } from './support/checkout.ts';
import { checkouts } from './support/fixture.ts';
import { launch, start, stop } from './support/seatwell.ts';
import { TrustingDevice } from './support/tls-client.ts';

const makeCheckout = checkouts();

const FIRST_VISIT = {
  siteName: 'Test site',
  timeZone: 'Europe/Oslo',
  units: 'SI',
  administrator: {
    name: 'Ada Ministrator',
    company: 'Owner',
    email: 'ada@plant.example',
    password: 'a long test secret',
  },
};

/** Starts with a local authority and an http port beside it; what it said, and a device that trusts it. */
async function startSecure(checkout: Checkout, words: readonly string[] = []) {
  const seatwell = await start(checkout, ['--port', '0', '--tls-local', '--redirect-port', '0', ...words]);
  const said = JSON.parse(seatwell.standardOutput()) as {
    url: string;
    redirectUrl: string;
    authority: { page: string; sha256: string };
  };
  // As a phone gets it: over plain http, before it can trust anything.
  const loaded = await fetch(`${said.redirectUrl}/seatwell-authority.crt`);
  expect(loaded.headers.get('content-type')).toBe('application/x-x509-ca-cert');
  const authority = Buffer.from(await loaded.arrayBuffer());
  return { seatwell, ...said, certificate: authority, device: new TrustingDevice(authority) };
}

test('a device that trusts the authority alone reaches every name of the machine, and no other device does', async () => {
  const checkout = await makeCheckout();
  const { seatwell, url, authority, certificate, device } = await startSecure(checkout, [
    '--tls-names',
    'plant.example,10.1.2.3',
  ]);
  expect(new URL(url).protocol).toBe('https:');
  expect(new X509Certificate(certificate).fingerprint256).toBe(authority.sha256);

  for (const name of ['localhost', '127.0.0.1', hostname().toLowerCase(), 'plant.example']) {
    const shown = await device.handshake(url, name);
    expect(shown.subjectaltname).toContain(name);
  }
  expect((await device.handshake(url, 'localhost')).subjectaltname).toContain('IP Address:10.1.2.3');
  await expect(device.handshake(url, 'elsewhere.example')).rejects.toThrow('does not match certificate');
  // Node's own list of authorities, as any device that was not told.
  await expect(fetch(`${url}/api/v1/health`)).rejects.toMatchObject({
    cause: { code: 'SELF_SIGNED_CERT_IN_CHAIN' },
  });
  expect((await device.ask(`${url}/api/v1/health`)).status).toBe(200);
  expect((await stop(seatwell)).code).toBe(0);
});

test('the session cookie over https is secure and bound to the host, also on a loopback address', async () => {
  const { seatwell, url, device } = await startSecure(await makeCheckout());
  const visit = await device.ask(`${url}/api/v1/first-visit`, {
    method: 'POST',
    headers: { origin: url },
    send: FIRST_VISIT,
  });
  expect(visit.status).toBe(200);
  const [cookie = ''] = [visit.headers['set-cookie']].flat();
  expect(cookie).toMatch(/^__Host-seatwell-session=/);
  for (const flag of ['Secure', 'HttpOnly', 'SameSite=Lax', 'Path=/']) expect(cookie.split('; ')).toContain(flag);
  expect(cookie).not.toMatch(/Domain/i);

  const session = cookie.split(';')[0] ?? '';
  expect((await device.ask(`${url}/api/v1/session`, { headers: { cookie: session } })).status).toBe(200);
  // Under the name that plain http uses it opens nothing.
  const renamed = session.replace('__Host-', '');
  expect((await device.ask(`${url}/api/v1/session`, { headers: { cookie: renamed } })).status).toBe(401);
  // Browsers are not told to insist on https: without the authority nobody could pass their warning any more.
  expect(visit.headers['strict-transport-security']).toBeUndefined();
  await stop(seatwell);
});

test('plain http only redirects, and shows the page and the certificate that a device needs first', async () => {
  const { seatwell, url, redirectUrl, authority, device } = await startSecure(await makeCheckout());
  for (const method of ['GET', 'POST']) {
    const answer = await fetch(`${redirectUrl}/api/v1/session?next=1`, { method, redirect: 'manual' });
    expect(answer.status).toBe(308);
    expect(answer.headers.get('location')).toBe(`${url}/api/v1/session?next=1`);
  }
  const page = await (await fetch(`${redirectUrl}/trust`)).text();
  expect(page).toContain(authority.sha256);
  for (const device of ['Android', 'iPhone', 'Windows', 'macOS']) expect(page).toContain(device);
  expect(page).toContain(`href="${url}"`);
  const secure = await device.ask(authority.page);
  expect(secure.status).toBe(200);
  expect(secure.body.toString()).toContain(authority.sha256);
  await stop(seatwell);
});

test('keys stay with their user, and the next start shows the same certificate', async () => {
  const checkout = await makeCheckout();
  const first = await startSecure(checkout);
  const shown = await first.device.handshake(first.url, 'localhost');
  await stop(first.seatwell);

  const folder = join(checkout.dataFolder, 'tls');
  expect(statSync(folder).mode & 0o777).toBe(0o700);
  expect(readdirSync(folder).sort()).toEqual(['authority.json', 'server.json']);
  for (const name of readdirSync(folder)) {
    expect(statSync(join(folder, name)).mode & 0o777).toBe(0o600);
    expect(readFileSync(join(folder, name), 'utf8')).toContain('PRIVATE KEY');
  }
  expect(first.certificate.toString('latin1')).not.toContain('PRIVATE');
  expect(first.seatwell.log()).not.toContain('PRIVATE');

  const second = await startSecure(checkout);
  expect(second.authority).toEqual({ ...first.authority, page: `${second.url}/trust` });
  expect((await first.device.handshake(second.url, 'localhost')).fingerprint256).toBe(shown.fingerprint256);
  await stop(second.seatwell);

  // A further name: a new certificate by the same authority, which no device has to trust anew.
  const wider = await startSecure(checkout, ['--tls-names', '10.9.8.7']);
  expect(wider.authority.sha256).toBe(first.authority.sha256);
  expect((await first.device.handshake(wider.url, 'localhost')).subjectaltname).toContain('10.9.8.7');
  await stop(wider.seatwell);

  const beyond = launch(checkout, ['--port', '0', '--tls-local', '--tls-names', 'other.example']);
  expect(await beyond.ended).toEqual({ code: 1, signal: null });
  expect(beyond.log()).toContain('was not made for other.example');
  rmSync(folder, { recursive: true });
  const anew = await startSecure(checkout, ['--tls-names', 'other.example']);
  expect(anew.authority.sha256).not.toBe(first.authority.sha256);
  await stop(anew.seatwell);
});

test('a key that others can read is refused with the remedy', async () => {
  const checkout = await makeCheckout();
  await stop((await startSecure(checkout)).seatwell);
  chmodSync(join(checkout.dataFolder, 'tls', 'authority.json'), 0o644);

  const refused = launch(checkout, ['--port', '0', '--tls-local']);
  expect(await refused.ended).toEqual({ code: 1, signal: null });
  expect(refused.log()).toContain('which holds a private key: close it with \\"chmod 600\\"');
});

test('beyond this machine nothing is served in the clear unless that is asked for, and then it is said', async () => {
  const checkout = await makeCheckout();
  const refused = launch(checkout, ['--port', '0', '--host', '0.0.0.0']);
  expect(await refused.ended).toEqual({ code: 1, signal: null });
  expect(refused.log()).toContain('--tls-local, or --tls-cert and --tls-key, or --plain-http');
  expect(refused.standardOutput()).toBe('');

  const asked = await start(checkout, ['--port', '0', '--host', '0.0.0.0', '--plain-http']);
  expect(asked.log()).toContain('Plain http can be reached from other machines (0.0.0.0)');
  const health = (await (await fetch(`${asked.url}/api/v1/health`)).json()) as { warnings: string[] };
  expect(health.warnings.join()).toContain('passwords cross the network readable');
  await stop(asked);

  const secure = await startSecure(checkout, ['--host', '0.0.0.0', '--hsts-days', '2']);
  const answer = await secure.device.ask(`${secure.url}/api/v1/health`);
  expect(answer.headers['strict-transport-security']).toBe('max-age=172800');
  expect(JSON.parse(answer.body.toString()).warnings).toEqual([]);
  await stop(secure.seatwell);
});
