import 'reflect-metadata';
import { randomBytes, webcrypto } from 'node:crypto';
import { isIP } from 'node:net';
import {
  AuthorityKeyIdentifierExtension,
  BasicConstraintsExtension,
  ExtendedKeyUsage,
  ExtendedKeyUsageExtension,
  Extension,
  KeyUsageFlags,
  KeyUsagesExtension,
  PemConverter,
  SubjectAlternativeNameExtension,
  SubjectKeyIdentifierExtension,
  X509Certificate,
  X509CertificateGenerator,
} from '@peculiar/x509';
import type { CertificateNames } from './local-names.ts';
import { NAME_CONSTRAINTS, nameConstraints } from './name-constraints.ts';

/** Key and certificate, PEM. */
export interface TlsMaterial {
  readonly key: string;
  readonly cert: string;
}

const ALGORITHM = { name: 'ECDSA', namedCurve: 'P-256', hash: 'SHA-256' } as const;
const DAY_MS = 86_400_000;
const AUTHORITY_DAYS = 3650;
/** Phones take no certificate of a server that holds longer than 825 days, and 398 is what public ones have. */
const SERVER_DAYS = 397;

const subtle = webcrypto.subtle as unknown as SubtleCrypto;
const makeKeys = () => subtle.generateKey(ALGORITHM, true, ['sign', 'verify']);
const serial = () => `4${randomBytes(15).toString('hex').slice(1)}`;

async function keyText(key: CryptoKey): Promise<string> {
  return `${PemConverter.encode(await subtle.exportKey('pkcs8', key), 'PRIVATE KEY')}\n`;
}

async function readKey(text: string): Promise<CryptoKey> {
  const [bytes] = PemConverter.decode(text);
  if (bytes === undefined) throw new Error('the file holds no private key');
  return subtle.importKey('pkcs8', bytes, ALGORITHM, true, ['sign']);
}

/** From a day before now, for phones whose clock is behind. */
const validity = (now: Date, days: number, latest = Number.POSITIVE_INFINITY) => ({
  notBefore: new Date(now.getTime() - DAY_MS),
  notAfter: new Date(Math.min(now.getTime() + days * DAY_MS, latest)),
});

/** An authority for ten years that may vouch for the given names and private addresses only. */
export async function makeAuthority(permitted: CertificateNames, title: string, now: Date): Promise<TlsMaterial> {
  const keys = await makeKeys();
  const cert = await X509CertificateGenerator.createSelfSigned({
    serialNumber: serial(),
    name: [{ CN: [title] }, { O: ['Seatwell'] }],
    ...validity(now, AUTHORITY_DAYS),
    signingAlgorithm: ALGORITHM,
    keys,
    extensions: [
      new BasicConstraintsExtension(true, 0, true),
      new KeyUsagesExtension(KeyUsageFlags.keyCertSign | KeyUsageFlags.cRLSign, true),
      new Extension(NAME_CONSTRAINTS, true, nameConstraints(permitted)),
      await SubjectKeyIdentifierExtension.create(keys.publicKey),
    ],
  });
  return { key: await keyText(keys.privateKey), cert: `${cert.toString('pem')}\n` };
}

/** A server's certificate by the authority, for 397 days or as long as the authority holds. */
export async function makeServerCertificate(
  authority: TlsMaterial,
  { names, addresses }: CertificateNames,
  now: Date,
): Promise<TlsMaterial> {
  const issuer = new X509Certificate(authority.cert);
  const keys = await makeKeys();
  const cert = await X509CertificateGenerator.create({
    serialNumber: serial(),
    subject: [{ CN: [names[0] ?? 'localhost'] }],
    issuer: issuer.subject,
    ...validity(now, SERVER_DAYS, issuer.notAfter.getTime()),
    signingAlgorithm: ALGORITHM,
    publicKey: keys.publicKey,
    signingKey: await readKey(authority.key),
    extensions: [
      new BasicConstraintsExtension(false, undefined, true),
      new KeyUsagesExtension(KeyUsageFlags.digitalSignature, true),
      new ExtendedKeyUsageExtension([ExtendedKeyUsage.serverAuth]),
      new SubjectAlternativeNameExtension([
        ...names.map((value) => ({ type: 'dns' as const, value })),
        ...addresses.filter((address) => isIP(address) !== 0).map((value) => ({ type: 'ip' as const, value })),
      ]),
      await SubjectKeyIdentifierExtension.create(keys.publicKey),
      await AuthorityKeyIdentifierExtension.create(issuer.publicKey),
    ],
  });
  // The chain: without the authority some clients cannot tell who issued it.
  return { key: await keyText(keys.privateKey), cert: `${cert.toString('pem')}\n${authority.cert}` };
}
