import { StartupError } from '../startup-error.ts';
import { type HeadToSign, signedHead } from './checkpoint.ts';
import { type KeyFile, type KeyPair, makeItBy, makeKeyFile, readKeyFile } from './key-file.ts';
import { type KnownKey, knownKeys, type Queryable, rememberFirstKey } from './known-keys.ts';

/** Whether heads are signed: by which key, or why not and what to do. */
export type Signing =
  | { readonly key: KeyPair; readonly known: readonly KnownKey[]; readonly unsigned?: never }
  | { readonly key?: never; readonly known: readonly KnownKey[]; readonly unsigned: string };

/** A head with its signature, or without one and with the reason. */
export type HeadSignature =
  | { readonly signed: string; readonly fingerprint: string; readonly unsigned: null }
  | { readonly signed: null; readonly fingerprint: null; readonly unsigned: string };

const NO_FILE = `Heads of the record are not signed: no key is named. Make one for all processes on this database, “${makeItBy('FILE')}”, and name it to each of them with --record-key (SEATWELL_RECORD_KEY).`;

/** Signs heads of the record with the key of this installation, and with no other that the database does not know. */
export class HeadSigner {
  readonly #db: Queryable;
  readonly #file: KeyFile | undefined;
  readonly #clock: () => Date;
  #key: KeyPair | undefined;

  constructor(db: Queryable, file: KeyFile | undefined, clock: () => Date) {
    this.#db = db;
    this.#file = file;
    this.#clock = clock;
  }

  /**
   * The key that signs at this moment. The database says which: a process with another one looks into its file again,
   * which may have been changed since it started, and otherwise refuses to sign.
   */
  async signing(): Promise<Signing> {
    const known = await knownKeys(this.#db);
    const file = this.#file;
    if (!file) return { known, unsigned: NO_FILE };
    try {
      const current = known.at(-1)?.fingerprint;
      if (!this.#key || this.#key.fingerprint !== current) this.#key = readKeyFile(file);
      if (!current) return await this.#first(file);
      const key = this.#key;
      if (key?.fingerprint === current) return { key, known };
      return { known, unsigned: key ? otherKey(file, key, current) : noKey(file, current) };
    } catch (error) {
      if (!(error instanceof StartupError)) throw error;
      return { known, unsigned: `Heads of the record are not signed. ${error.message}` };
    }
  }

  async #first(file: KeyFile): Promise<Signing> {
    this.#key ??= makeKeyFile(file, 'keep-first');
    const key = this.#key;
    await rememberFirstKey(this.#db, key, this.#clock());
    const known = await knownKeys(this.#db);
    const current = known.at(-1)?.fingerprint;
    // Without a site there is no record yet whose heads could be signed.
    if (current === undefined || current === key.fingerprint) return { key, known };
    return { known, unsigned: otherKey(file, key, current) };
  }

  /** A signed head, or the reason why it is not signed. */
  async sign(head: HeadToSign): Promise<HeadSignature> {
    const { key, unsigned } = await this.signing();
    if (!key) return { signed: null, fingerprint: null, unsigned };
    const { privateKey, publicKey, fingerprint } = key;
    return { signed: signedHead(head, this.#clock(), privateKey, publicKey), fingerprint, unsigned: null };
  }

  /** What health and the operator should know. */
  async warnings(): Promise<readonly string[]> {
    const { unsigned } = await this.signing();
    return unsigned === undefined ? [] : [unsigned];
  }
}

const changeIt = 'or, where it is lost, change the key with “npm run record-key -- change”';

const otherKey = ({ path }: KeyFile, key: KeyPair, current: string): string =>
  `Heads of the record are not signed: the key of this process (${path}) is ${key.fingerprint}, and this database’s is ${current}. Give every process the file with the database’s key, ${changeIt}.`;

const noKey = ({ path }: KeyFile, current: string): string =>
  `Heads of the record are not signed: this database’s key ${current} is not here. Bring its file to ${path}, ${changeIt}.`;
