import { X509Certificate } from 'node:crypto';
import { mkdirSync, rmSync } from 'node:fs';
import { hostname } from 'node:os';
import { join } from 'node:path';
import type { Log } from '../log.ts';
import { makePrivateFolder } from '../private-folder.ts';
import { StartupError } from '../startup-error.ts';
import { type CertificateNames, localNames } from './local-names.ts';
import { makeAuthority, makeServerCertificate, type TlsMaterial } from './make-certificates.ts';
import { mayVouchFor } from './name-constraints.ts';
import { readPrivateJson, writePrivateJson } from './private-file.ts';

/** A certificate that lapses sooner than this is made anew. */
const RENEW_BEFORE_DAYS = 30;

interface Kept extends TlsMaterial, CertificateNames {}

export interface LocalAuthority {
  /** PEM: public, and all that leaves this machine */
  readonly certificate: string;
  /** What the server shows; made anew when it lapses or the machine's names have changed. */
  serverCertificate(now: Date): Promise<TlsMaterial>;
}

const daysLeft = (pem: string, now: Date): number =>
  (new Date(new X509Certificate(pem).validTo).getTime() - now.getTime()) / 86_400_000;

const sameNames = (kept: CertificateNames, wanted: CertificateNames): boolean =>
  [...wanted.names, ...wanted.addresses].sort().join() === [...kept.names, ...kept.addresses].sort().join();

/**
 * The authority of this installation, kept in the data folder and made on the first call.
 * @param askedNames names and addresses beyond those of the machine
 * @throws StartupError when its file is open to others or may not vouch for a name that was asked for
 */
export async function openLocalAuthority(
  dataFolder: string,
  askedNames: readonly string[],
  now: Date,
  log: Log,
): Promise<LocalAuthority> {
  makePrivateFolder(dataFolder);
  const folder = join(dataFolder, 'tls');
  mkdirSync(folder, { recursive: true, mode: 0o700 });
  const authorityFile = join(folder, 'authority.json');
  const serverFile = join(folder, 'server.json');
  const authority = await keptAuthority(authorityFile, askedNames, now, log);
  const refused = askedNames.filter((name) => !mayVouchFor(authority, name.toLowerCase()));
  if (refused.length > 0) {
    throw new StartupError(
      `The local authority was not made for ${refused.join(', ')} (--tls-names), only for ${authority.names.join(', ')} and private addresses: leave the name out, or remove ${folder}, so that a new authority is made that every device must trust anew.`,
    );
  }
  return {
    certificate: authority.cert,
    serverCertificate: async (at) => {
      const wanted = permittedNames(authority, askedNames);
      const kept = readPrivateJson<Kept>(serverFile);
      const ours = kept && new X509Certificate(kept.cert).verify(new X509Certificate(authority.cert).publicKey);
      if (kept && ours && sameNames(kept, wanted) && daysLeft(kept.cert, at) > RENEW_BEFORE_DAYS) return kept;
      const made = await makeServerCertificate(authority, wanted, at);
      writePrivateJson(serverFile, { ...made, ...wanted } satisfies Kept, 'replace');
      log.info(`Made a certificate for ${[...wanted.names, ...wanted.addresses].join(', ')}.`);
      return made;
    },
  };
}

/** An address that the machine has got since and that is not private stays out: the authority may not say it. */
function permittedNames(authority: Kept, asked: readonly string[]): CertificateNames {
  const { names, addresses } = localNames(asked);
  const permitted = (name: string) => mayVouchFor(authority, name);
  return { names: names.filter(permitted), addresses: addresses.filter(permitted) };
}

async function keptAuthority(file: string, asked: readonly string[], now: Date, log: Log): Promise<Kept> {
  const kept = readPrivateJson<Kept>(file);
  if (kept && daysLeft(kept.cert, now) > RENEW_BEFORE_DAYS) return kept;
  if (kept) {
    log.warn('The local authority lapses: a new one was made, and every device must trust it anew (page /trust).');
    rmSync(file);
  }
  const permitted = localNames(asked);
  const made = await makeAuthority(permitted, `Seatwell on ${hostname()}, ${now.toISOString().slice(0, 10)}`, now);
  writePrivateJson(file, { ...made, ...permitted } satisfies Kept, 'keep-first');
  // Another process may have been first: then its authority is the one.
  return readPrivateJson<Kept>(file) as Kept;
}
