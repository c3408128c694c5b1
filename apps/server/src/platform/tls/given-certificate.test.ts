import { createPrivateKey } from 'node:crypto';
import { mkdtempSync, rmSync, utimesSync, writeFileSync } from 'node:fs';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { connect, type PeerCertificate, rootCertificates } from 'node:tls';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { Log } from '../log.ts';
import { isPubliclyTrusted, readGivenCertificate } from './given-certificate.ts';
import { makeAuthority, makeServerCertificate, type TlsMaterial } from './make-certificates.ts';
import { openTls } from './tls-source.ts';

const DAY_MS = 86_400_000;
const now = new Date();
const NAMES = { names: ['localhost'], addresses: ['127.0.0.1'] };
const authority = await makeAuthority(NAMES, 'Test authority', now);
const good = await makeServerCertificate(authority, NAMES, now);
const other = await makeServerCertificate(authority, NAMES, now);

let folder: string;
let warnings: string[];
const log: Log = { info: () => {}, warn: (line) => warnings.push(line), error: () => {} };

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'seatwell tls-'));
  warnings = [];
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

function files({ cert, key }: TlsMaterial): [certFile: string, keyFile: string] {
  const paths: [string, string] = [join(folder, 'plant.crt'), join(folder, 'plant.key')];
  writeFileSync(paths[0], cert);
  writeFileSync(paths[1], key, { mode: 0o600 });
  return paths;
}

const reading = (material: TlsMaterial, at = now) => {
  const [certFile, keyFile] = files(material);
  return () => readGivenCertificate(certFile, keyFile, at, log);
};

describe('a certificate of the site’s own', () => {
  it('is taken with its chain where key and dates agree', () => {
    expect(reading(good)()).toEqual(good);
    expect(warnings).toEqual([]);
  });

  it('is refused when it has expired, when its day has not come, and warned of when it ends soon', () => {
    const days = (count: number) => new Date(now.getTime() + count * DAY_MS);
    expect(reading(good, days(400))).toThrow(/plant\.crt of --tls-cert expired on .*renew it and start again/);
    expect(reading(good, days(-30))).toThrow(/plant\.crt of --tls-cert holds only from .*check the clock/);
    expect(reading(good, days(390))()).toEqual(good);
    expect(warnings.join()).toContain('expires on');
  });

  it('is refused with the key of another, and both files are named', () => {
    expect(reading({ cert: good.cert, key: other.key })).toThrow(
      /plant\.key of --tls-key does not belong to the certificate .*plant\.crt/,
    );
  });

  it('is refused where a file is missing or is something else, with what it should be', () => {
    const [certFile, keyFile] = files(good);
    expect(() => readGivenCertificate(join(folder, 'none.crt'), keyFile, now, log)).toThrow(
      'none.crt of --tls-cert does not exist',
    );
    expect(() => readGivenCertificate(certFile, join(folder, 'none.key'), now, log)).toThrow(
      'none.key of --tls-key does not exist',
    );
    expect(reading({ cert: 'words', key: good.key })).toThrow('holds no certificate that can be read');
    expect(reading({ cert: good.cert, key: 'words' })).toThrow('holds no private key that can be read');
    expect(reading({ cert: good.key, key: good.key })).toThrow('holds no certificate that can be read');
  });

  it('is refused with a locked key, with how to unlock it', () => {
    const locked = createPrivateKey(good.key).export({
      type: 'pkcs8',
      format: 'pem',
      cipher: 'aes-256-cbc',
      passphrase: 'secret words',
    });
    expect(reading({ cert: good.cert, key: String(locked) })).toThrow('is locked with a passphrase');
  });

  it('is warned of when everybody can read its key', () => {
    const [certFile, keyFile] = files(good);
    rmSync(keyFile);
    writeFileSync(keyFile, good.key, { mode: 0o644 });
    readGivenCertificate(certFile, keyFile, now, log);
    expect(warnings.join()).toContain('Everybody on this machine can read the private key');
  });

  it('makes browsers insist on https only where every browser trusts it', () => {
    expect(isPubliclyTrusted(good)).toBe(false);
    // A public authority's own certificate stands for what it issues: we hold no key of theirs.
    expect(isPubliclyTrusted({ cert: rootCertificates[0] ?? '', key: '' })).toBe(true);
  });
});

const shownBy = (port: number): Promise<PeerCertificate> =>
  new Promise((resolve, reject) => {
    const socket = connect({ port, host: '127.0.0.1', ca: authority.cert, servername: 'localhost' }, () => {
      resolve(socket.getPeerCertificate());
      socket.end();
    });
    socket.once('error', reject);
  });

describe('a running server', () => {
  it('shows a renewed certificate without a restart, and keeps the present one where the new one is bad', async () => {
    const [tlsCert, tlsKey] = files(good);
    const settings = { tlsCert, tlsKey, tlsLocal: false, tlsNames: [], dataFolder: folder };
    const tls = await openTls(settings, log);
    if (!tls) throw new Error('No TLS was opened.');
    const server = tls.createServer((_request, response) => response.end());
    await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
    const { port } = server.address() as AddressInfo;
    const before = await shownBy(port);

    files({ cert: other.cert, key: good.key });
    utimesSync(tlsCert, now, new Date(now.getTime() + 5_000));
    await tls.refresh();
    expect((await shownBy(port)).fingerprint256).toBe(before.fingerprint256);
    expect(warnings.join()).toContain('does not belong to the certificate');

    files(other);
    utimesSync(tlsCert, now, new Date(now.getTime() + 10_000));
    await tls.refresh();
    expect((await shownBy(port)).fingerprint256).not.toBe(before.fingerprint256);
    await tls.stop();
    server.closeAllConnections();
    server.close();
  });
});
