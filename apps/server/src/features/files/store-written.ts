import { createHash } from 'node:crypto';
import { mkdtemp, open, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Database, inTransaction, type Transaction } from '../../platform/database/pool.ts';
import type { StoredFile } from './store-file.ts';

const PIECE = 1024 * 1024;

export type WritePiece = (bytes: Buffer) => Promise<void>;

/**
 * Stores a file that is made piece by piece: it waits in a temporary file until it is whole, and is put together in the
 * database, so that neither its making nor its storing holds it in memory.
 * @param make writes the file, and answers what it wants to say of it
 */
export async function storeWritten<T>(
  db: Database,
  siteId: string,
  mediaType: string,
  make: (write: WritePiece) => Promise<T>,
): Promise<StoredFile & { readonly made: T }> {
  const folder = await mkdtemp(join(tmpdir(), 'seatwell-file-'));
  const path = join(folder, 'made');
  try {
    const sha = createHash('sha256');
    let size = 0;
    const file = await open(path, 'w');
    let made: T;
    try {
      made = await make(async (bytes) => {
        sha.update(bytes);
        size += bytes.length;
        await file.write(bytes);
      });
    } finally {
      await file.close();
    }
    const hash = sha.digest('hex');
    await inTransaction(db, (tx) => storePieces(tx, path, { siteId, hash, mediaType, size }));
    return { hash, mediaType, size, made };
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}

async function storePieces(
  tx: Transaction,
  path: string,
  { siteId, hash, mediaType, size }: StoredFile & { readonly siteId: string },
): Promise<void> {
  await tx.query('CREATE TEMPORARY TABLE file_piece (number int, content bytea) ON COMMIT DROP');
  const file = await open(path, 'r');
  try {
    for (let number = 0; ; number += 1) {
      const { bytesRead, buffer } = await file.read(Buffer.alloc(PIECE), 0, PIECE);
      if (bytesRead === 0) break;
      await tx.query('INSERT INTO file_piece VALUES ($1, $2)', [number, buffer.subarray(0, bytesRead)]);
    }
  } finally {
    await file.close();
  }
  await tx.query(
    `INSERT INTO stored_file (site_id, hash, media_type, size, content, stored_at)
     SELECT $1, $2, $3, $4, string_agg(content, ''::bytea ORDER BY number), now() FROM file_piece
     ON CONFLICT (site_id, hash) DO NOTHING`,
    [siteId, hash, mediaType, size],
  );
}
