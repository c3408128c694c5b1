import { createHash } from 'node:crypto';
import { createReadStream } from 'node:fs';
import { createGunzip } from 'node:zlib';
import { z } from 'zod';
import { StartupError } from '../startup-error.ts';
import { type BackupHead, type BackupTotal, FORMAT, FORMAT_VERSION } from './format.ts';

const headSchema = z.object({
  format: z.literal(FORMAT),
  formatVersion: z.number(),
  seatwell: z.string(),
  postgres: z.string(),
  takenAt: z.string(),
  holds: z.string(),
  migrations: z.array(z.object({ name: z.string(), checksum: z.string() })),
  joints: z.number(),
});
const totalSchema = z.object({
  total: z.object({
    tables: z.array(z.object({ table: z.string(), rows: z.number(), sha256: z.string() })),
    heads: z.array(
      z.object({
        siteId: z.string(),
        streamId: z.string(),
        kind: z.string(),
        sequence: z.number(),
        root: z.string(),
      }),
    ),
  }),
  sha256: z.string(),
});

/** A table of the file while it is read; `blocks` must be read to its end, or not at all. */
export interface TableInFile {
  readonly table: string;
  readonly columns: readonly string[];
  readonly blocks: AsyncGenerator<Buffer, void>;
}

export interface ReadBackup extends BackupTotal {
  readonly head: BackupHead;
}

const damaged = (file: string, how: string): StartupError =>
  new StartupError(
    `${file} is damaged or cut short (${how}): nothing was done with it. Use another copy or an earlier backup.`,
  );

/**
 * Reads a backup from its first byte to its last and holds every count and hash in it against what was read.
 * @param onTable told of each table in its order; what it leaves unread is read (and checked) here
 * @throws StartupError when the file is no backup, of a newer form, damaged or cut short
 */
export async function readBackup(
  file: string,
  onTable: (table: TableInFile, head: BackupHead) => Promise<void> = async () => {},
): Promise<ReadBackup> {
  const input = new Input(file);
  try {
    return await readThrough(input, onTable, file);
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    if (code === 'ENOENT' || code === 'EACCES' || code === 'EISDIR')
      throw new StartupError(`${file} cannot be read (${code}): name the file of a backup.`);
    if (code?.startsWith('Z_') || error instanceof Unreadable) throw damaged(file, (error as Error).message);
    throw error;
  } finally {
    input.close();
  }
}

async function readThrough(
  input: Input,
  onTable: (table: TableInFile, head: BackupHead) => Promise<void>,
  file: string,
): Promise<ReadBackup> {
  const head = headSchema.safeParse(await input.json());
  if (!head.success) throw new StartupError(`${file} is no backup of Seatwell: name the file that "backup" wrote.`);
  if (head.data.formatVersion !== FORMAT_VERSION)
    throw new StartupError(
      `${file} has form ${head.data.formatVersion}, and this version reads form ${FORMAT_VERSION}: use the Seatwell that wrote it, or a newer one.`,
    );
  const tables: BackupTotal['tables'][number][] = [];
  for (;;) {
    const before = input.sha256();
    const said = await input.json();
    const end = totalSchema.safeParse(said);
    if (end.success) {
      if (end.data.sha256 !== before) throw new Unreadable('its SHA-256 is not the one at its end');
      if (JSON.stringify(end.data.total.tables) !== JSON.stringify(tables))
        throw new Unreadable('its list of tables is not what it holds');
      if (!(await input.atEnd())) throw new Unreadable('something follows its end');
      return { head: head.data as BackupHead, ...end.data.total };
    }
    tables.push(await readTable(input, said, (table) => onTable(table, head.data as BackupHead)));
  }
}

async function readTable(
  input: Input,
  said: unknown,
  onTable: (table: TableInFile) => Promise<void>,
): Promise<BackupTotal['tables'][number]> {
  const { table, columns } = parsed(z.object({ table: z.string(), columns: z.array(z.string()) }), said);
  const hash = createHash('sha256');
  let rows = 0;
  let end: unknown;
  async function* blocks(): AsyncGenerator<Buffer, void> {
    for (;;) {
      const line = await input.line();
      if (!line.startsWith('#')) {
        end = asJson(line);
        return;
      }
      const block = await input.bytes(Number(line.slice(1)));
      hash.update(block);
      for (let at = block.indexOf(10); at !== -1; at = block.indexOf(10, at + 1)) rows += 1;
      yield block;
    }
  }
  const reading = blocks();
  await onTable({ table, columns, blocks: reading });
  for await (const _ of reading) {
    // What nobody asked for is checked all the same.
  }
  const total = parsed(z.object({ end: z.literal(table), rows: z.number(), sha256: z.string() }), end);
  const sha256 = hash.digest('hex');
  if (total.rows !== rows || total.sha256 !== sha256) throw new Unreadable(`table ${table} is not what was written`);
  return { table, rows, sha256 };
}

class Unreadable extends Error {}

function parsed<T>(schema: z.ZodType<T>, value: unknown): T {
  const result = schema.safeParse(value);
  if (!result.success) throw new Unreadable('a line says something unexpected');
  return result.data;
}

function asJson(line: string): unknown {
  try {
    return JSON.parse(line);
  } catch {
    throw new Unreadable('a line is no JSON');
  }
}

const LONGEST_LINE = 16 * 1024 * 1024;
const LONGEST_BLOCK = 1024 * 1024 * 1024;

/** Lines and counted bytes of the unpacked file, with the SHA-256 of all that was taken so far. */
class Input {
  readonly #raw: ReturnType<typeof createReadStream>;
  readonly #parts: AsyncIterator<Buffer>;
  #rest: Buffer = Buffer.alloc(0);
  #hash = createHash('sha256');

  constructor(file: string) {
    this.#raw = createReadStream(file);
    const unpacked = createGunzip();
    this.#raw.on('error', (error) => unpacked.destroy(error));
    this.#parts = this.#raw.pipe(unpacked)[Symbol.asyncIterator]() as AsyncIterator<Buffer>;
  }

  sha256(): string {
    return this.#hash.copy().digest('hex');
  }

  async #more(): Promise<boolean> {
    const next = await this.#parts.next();
    if (next.done) return false;
    this.#rest = this.#rest.length === 0 ? next.value : Buffer.concat([this.#rest, next.value]);
    return true;
  }

  #take(length: number): Buffer {
    const taken = this.#rest.subarray(0, length);
    this.#rest = this.#rest.subarray(length);
    this.#hash.update(taken);
    return taken;
  }

  async line(): Promise<string> {
    for (;;) {
      const end = this.#rest.indexOf(10);
      if (end !== -1) return this.#take(end + 1).toString('utf8', 0, end);
      if (this.#rest.length > LONGEST_LINE) throw new Unreadable('a line does not end');
      if (!(await this.#more())) throw new Unreadable('it ends in the middle');
    }
  }

  async json(): Promise<unknown> {
    return asJson(await this.line());
  }

  async bytes(length: number): Promise<Buffer> {
    if (!Number.isSafeInteger(length) || length < 0 || length > LONGEST_BLOCK)
      throw new Unreadable('a block has no length');
    const parts: Buffer[] = [];
    for (let missing = length; missing > 0; ) {
      if (this.#rest.length === 0 && !(await this.#more())) throw new Unreadable('it ends in the middle');
      const part = this.#take(Math.min(missing, this.#rest.length));
      parts.push(part);
      missing -= part.length;
    }
    return Buffer.concat(parts);
  }

  async atEnd(): Promise<boolean> {
    return this.#rest.length === 0 && !(await this.#more());
  }

  close(): void {
    this.#raw.destroy();
  }
}
