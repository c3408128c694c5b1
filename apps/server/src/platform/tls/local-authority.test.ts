import { X509Certificate } from 'node:crypto';
import { mkdtempSync, rmSync } from 'node:fs';
import { createServer } from 'node:https';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { connect } from 'node:tls';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { Log } from '../log.ts';
import { openLocalAuthority } from './local-authority.ts';
import { type CertificateNames, isHostName, localNames } from './local-names.ts';
import { makeAuthority, makeServerCertificate } from './make-certificates.ts';
import { mayVouchFor } from './name-constraints.ts';

const DAY_MS = 86_400_000;
const now = new Date();
const inDays = (days: number) => new Date(now.getTime() + days * DAY_MS);

/** What a device that trusts the authority says of a certificate for these names, asked under one of them. */
async function verdict(permitted: CertificateNames, names: CertificateNames, askedAs: string): Promise<string> {
  const authority = await makeAuthority(permitted, 'Test authority', now);
  const server = createServer(await makeServerCertificate(authority, names, now));
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const { port } = server.address() as AddressInfo;
  const said = await new Promise<string>((resolve) => {
    const servername = /^[\d.]+$/.test(askedAs) ? {} : { servername: askedAs };
    const options = { port, host: '127.0.0.1', ca: authority.cert, ...servername };
    const socket = connect(options, () => {
      resolve('trusted');
      socket.end();
    });
    socket.once('error', (error) => resolve(error.message));
  });
  server.close();
  return said;
}

const PERMITTED = { names: ['localhost', 'plant.example'], addresses: ['127.0.0.1', '192.0.2.7', '2001:db8::7'] };
const only = (name: string) => ({ names: [name], addresses: [] });

describe('the local authority', () => {
  it('vouches for what it was made for', async () => {
    expect(await verdict(PERMITTED, PERMITTED, 'plant.example')).toBe('trusted');
    expect(await verdict(PERMITTED, PERMITTED, '127.0.0.1')).toBe('trusted');
    expect(await verdict(PERMITTED, only('gate.plant.example'), 'gate.plant.example')).toBe('trusted');
  });

  it('opens nothing else with a stolen key: another name or a public address is refused by the device', async () => {
    expect(await verdict(PERMITTED, only('bank.example'), 'bank.example')).toBe('permitted subtree violation');
    const publicAddress = { names: ['plant.example'], addresses: ['198.51.100.1'] };
    expect(await verdict(PERMITTED, publicAddress, 'plant.example')).toBe('permitted subtree violation');
    const ipv6 = { names: ['plant.example'], addresses: ['2001:db8::8'] };
    expect(await verdict(PERMITTED, ipv6, 'plant.example')).toBe('permitted subtree violation');
  });

  it.each([
    ['plant.example', true],
    ['gate.plant.example', true],
    ['notplant.example', false],
    ['192.0.2.7', true],
    ['192.0.2.8', false],
    ['172.31.255.255', true],
    ['172.32.0.1', false],
    ['fd00::1', true],
    ['2001:db8::7', true],
    ['2001:db8::8', false],
  ])('says before it is asked whether it may vouch for %s', (name, may) => {
    expect(mayVouchFor(PERMITTED, name)).toBe(may);
  });
});

describe('the certificate of the local authority', () => {
  let folder: string;
  let said: string[];
  const log: Log = { info: () => {}, warn: (line) => said.push(line), error: () => {} };
  const open = (at: Date) => openLocalAuthority(join(folder, 'data'), [], at, log);

  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'seatwell tls-'));
    said = [];
  });
  afterEach(() => rmSync(folder, { recursive: true, force: true }));

  it('is made anew when it lapses, by the same authority', async () => {
    const local = await open(now);
    const first = await local.serverCertificate(now);
    expect(await local.serverCertificate(inDays(300))).toMatchObject({ cert: first.cert });
    const renewed = await local.serverCertificate(inDays(375));
    expect(renewed.cert).not.toBe(first.cert);
    expect(new X509Certificate(renewed.cert).verify(new X509Certificate(local.certificate).publicKey)).toBe(true);
    expect(new Date(new X509Certificate(renewed.cert).validTo) > inDays(700)).toBe(true);
    expect(said).toEqual([]);
  });

  it('holds no longer than phones accept and no longer than its authority', async () => {
    const local = await open(now);
    const validity_days = (pem: string) => {
      const { validFrom, validTo } = new X509Certificate(pem);
      return (new Date(validTo).getTime() - new Date(validFrom).getTime()) / DAY_MS;
    };
    expect(validity_days((await local.serverCertificate(now)).cert)).toBeLessThanOrEqual(825);
    const late = await local.serverCertificate(inDays(3600));
    expect(new X509Certificate(late.cert).validTo).toBe(new X509Certificate(local.certificate).validTo);
  });

  it('comes from a new authority when that lapses, and the operator is told', async () => {
    const first = await open(now);
    expect((await open(inDays(3600))).certificate).toBe(first.certificate);
    const second = await open(inDays(3640));
    expect(second.certificate).not.toBe(first.certificate);
    expect(said.join()).toContain('every device must trust it anew');
  });

  it('is one for several processes that start at once', async () => {
    const opened = await Promise.all([open(now), open(now), open(now)]);
    expect(new Set(opened.map(({ certificate }) => certificate)).size).toBe(1);
  });
});

describe('the names of the machine', () => {
  it('hold this machine’s and those asked for, each once, and nothing that a certificate cannot carry', () => {
    const { names, addresses } = localNames(['Plant.Example', '10.1.2.3', '10.1.2.3', 'bad_name', '::ffff:10.1.2.3']);
    expect(names).toContain('localhost');
    expect(names).toContain('plant.example');
    expect(names).not.toContain('bad_name');
    expect(addresses.filter((address) => address === '10.1.2.3')).toHaveLength(1);
    expect(addresses).toEqual(expect.arrayContaining(['127.0.0.1', '::1']));
    expect(addresses.filter((address) => address.startsWith('::ffff:'))).toEqual([]);
  });

  it.each([
    ['plant-1', true],
    ['a.b.example', true],
    ['-plant', false],
    ['two words', false],
    ['10.0.0.1', false],
    [`${'a'.repeat(64)}.example`, false],
  ])('%s counts as a host name: %s', (name, is) => {
    expect(isHostName(name)).toBe(is);
  });
});
