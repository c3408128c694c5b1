import { existsSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import {
  makeAuthority,
  makeServerCertificate,
  type TlsMaterial,
} from '../../apps/server/src/platform/tls/make-certificates.ts';
import type { Checkout } from './support/checkout.ts';
import { checkouts } from './support/fixture.ts';
import { launch, start, stop } from './support/seatwell.ts';
import { TrustingDevice } from './support/tls-client.ts';

const makeCheckout = checkouts();

const NAMES = { names: ['localhost'], addresses: ['127.0.0.1'] };
const now = new Date();
const longAgo = new Date(now.getTime() - 500 * 86_400_000);
const authority = await makeAuthority(NAMES, 'Authority of the plant', longAgo);
const good = await makeServerCertificate(authority, NAMES, now);
const expired = await makeServerCertificate(authority, NAMES, longAgo);

function words(checkout: Checkout, { cert, key }: TlsMaterial): string[] {
  const [certFile, keyFile] = [join(checkout.folder, 'plant.crt'), join(checkout.folder, 'plant.key')];
  writeFileSync(certFile, cert);
  writeFileSync(keyFile, key, { mode: 0o600 });
  return ['--port', '0', '--tls-cert', certFile, '--tls-key', keyFile];
}

test('a certificate of the plant’s own is shown, and no page of trust is offered with it', async () => {
  const checkout = await makeCheckout();
  const seatwell = await start(checkout, words(checkout, good));
  const device = new TrustingDevice(authority.cert);
  expect((await device.handshake(seatwell.url, 'localhost')).subject.CN).toBe('localhost');
  const answer = await device.ask(`${seatwell.url}/api/v1/health`);
  expect(answer.status).toBe(200);
  // The plant's authority is no public one: nobody may be locked out.
  expect(answer.headers['strict-transport-security']).toBeUndefined();
  expect((await device.ask(`${seatwell.url}/seatwell-authority.crt`)).status).toBe(404);
  expect((await stop(seatwell)).code).toBe(0);
});

test.each([
  ['has expired', expired, 'plant.crt of --tls-cert expired on'],
  ['has the key of another', { cert: good.cert, key: expired.key }, 'plant.key of --tls-key does not belong to'],
  ['is none', { cert: 'words', key: good.key }, 'plant.crt of --tls-cert holds no certificate'],
])(
  'a certificate that %s ends the start before a database is made, with the file and the remedy',
  async (_, material, complaint) => {
    const checkout = await makeCheckout();
    const refused = launch(checkout, words(checkout, material));
    expect(await refused.ended).toEqual({ code: 1, signal: null });
    expect(refused.log()).toContain(complaint);
    expect(refused.standardOutput()).toBe('');
    expect(existsSync(checkout.dataFolder)).toBe(false);
  },
);
