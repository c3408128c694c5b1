import { createPrivateKey, createPublicKey, generateKeyPairSync, type KeyObject, randomBytes } from 'node:crypto';
import { existsSync, linkSync, readFileSync, renameSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Settings } from '../config.ts';
import { StartupError } from '../startup-error.ts';
import { fingerprintOf } from './checkpoint.ts';

/** The key of this installation, with which it signs heads of its record. */
export interface KeyPair {
  readonly privateKey: KeyObject;
  readonly publicKey: KeyObject;
  readonly fingerprint: string;
}

/** Where the key is kept, and whether it is ours to make. */
export interface KeyFile {
  readonly path: string;
  readonly given: boolean;
}

/** How a person makes a key. */
export const makeItBy = (path: string): string =>
  `openssl genpkey -algorithm ed25519 -out ${path} && chmod 600 ${path}`;

/**
 * The file that was named, or the one in the data folder beside the embedded database. With a database of one's own and
 * no file named there is none: other processes on that database would each make another key.
 */
export function keyFileOf({
  recordKey,
  databaseUrl,
  dataFolder,
}: Pick<Settings, 'recordKey' | 'databaseUrl' | 'dataFolder'>): KeyFile | undefined {
  if (recordKey !== undefined) return { path: recordKey, given: true };
  return databaseUrl === undefined ? { path: join(dataFolder, 'record-key.pem'), given: false } : undefined;
}

/**
 * Reads the key; undefined where there is no such file yet.
 * @throws StartupError naming the file and the remedy: missing though it was named, open to others, no Ed25519 key
 */
export function readKeyFile({ path, given }: KeyFile): KeyPair | undefined {
  if (!existsSync(path)) {
    if (!given) return undefined;
    throw new StartupError(
      `The file ${path} of --record-key (SEATWELL_RECORD_KEY) does not exist: bring it, or make the first one with "${makeItBy(path)}".`,
    );
  }
  const mode = statSync(path).mode & 0o777;
  // What a container mounts belongs to a group at times; nobody else has a reason.
  if ((mode & (given ? 0o007 : 0o077)) !== 0) {
    throw new StartupError(
      `Others can read ${path} (mode ${mode.toString(8)}), the key that signs heads of the record: close it with "chmod 600", and where somebody may have read it change the key with "npm run record-key -- change".`,
    );
  }
  return pairOf(readText(path), path);
}

function readText(path: string): string {
  try {
    return readFileSync(path, 'utf8');
  } catch (error) {
    throw new StartupError(
      `The key ${path}, which signs heads of the record, cannot be read (${(error as NodeJS.ErrnoException).code}): make it readable for the user of this process.`,
    );
  }
}

function pairOf(pem: string, path: string): KeyPair {
  const remedy = `give an Ed25519 key in PEM without a passphrase, such as "${makeItBy(path)}" makes, or bring the file back`;
  let privateKey: KeyObject;
  try {
    privateKey = createPrivateKey(pem);
  } catch (error) {
    throw new StartupError(`${path} holds no private key that can be read (${(error as Error).message}): ${remedy}.`);
  }
  if (privateKey.asymmetricKeyType !== 'ed25519')
    throw new StartupError(
      `${path} holds a key of the kind ${privateKey.asymmetricKeyType}, and heads of the record are signed with Ed25519: ${remedy}.`,
    );
  const publicKey = createPublicKey(privateKey);
  return { privateKey, publicKey, fingerprint: fingerprintOf(publicKey) };
}

/**
 * Makes a key, complete or not at all.
 * @param how `keep-first`: what another process made meanwhile is the key
 * @throws StartupError when it cannot be written
 */
export function makeKeyFile(file: KeyFile, how: 'replace' | 'keep-first'): KeyPair {
  const { path } = file;
  const draft = `${path}.${randomBytes(6).toString('hex')}`;
  const { privateKey } = generateKeyPairSync('ed25519');
  try {
    writeFileSync(draft, privateKey.export({ format: 'pem', type: 'pkcs8' }), { mode: 0o600, flag: 'wx' });
    if (how === 'replace') renameSync(draft, path);
    else linkSync(draft, path);
  } catch (error) {
    const { code, message } = error as NodeJS.ErrnoException;
    if (code !== 'EEXIST')
      throw new StartupError(
        `The key that signs heads of the record cannot be made at ${path} (${message}): make the folder writable for this user.`,
      );
  } finally {
    rmSync(draft, { force: true });
  }
  return readKeyFile(file) as KeyPair;
}
