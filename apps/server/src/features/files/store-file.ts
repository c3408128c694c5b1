import { createHash } from 'node:crypto';
import { Readable } from 'node:stream';
import sharp from 'sharp';
import type { Database } from '../../platform/database/pool.ts';
import { Problem } from '../../platform/errors/problem.ts';

export interface StoredFile {
  readonly hash: string;
  readonly mediaType: string;
  readonly size: number;
}

export const LARGEST_FILE = 20 * 1024 * 1024;
const LONGEST_EDGE = 2400;
const LARGEST_PICTURE_PIXELS = 60_000_000;

const isPdf = (bytes: Buffer): boolean => bytes.subarray(0, 5).toString('latin1') === '%PDF-';

/**
 * What is kept of an upload: a PDF as it is, a picture re-encoded, so that neither place nor device nor anything
 * hidden behind it stays. The type comes from the bytes, never from what the sender says.
 * @throws Problem `media-type-refused`, `file-refused`
 */
async function kept(bytes: Buffer): Promise<{ bytes: Buffer; mediaType: string }> {
  if (bytes.length === 0) throw new Problem('file-refused', 'The file is empty. Take the photo again.');
  if (isPdf(bytes)) return { bytes, mediaType: 'application/pdf' };
  const picture = sharp(bytes, { limitInputPixels: LARGEST_PICTURE_PIXELS, failOn: 'error' });
  const { format } = await picture.metadata().catch(() => ({ format: undefined }));
  if (!format || !['jpeg', 'png', 'webp', 'heif', 'avif', 'tiff'].includes(format)) {
    throw new Problem('media-type-refused', 'This is neither a picture (JPEG, PNG, WebP, HEIF) nor a PDF.');
  }
  try {
    const encoded = await picture
      .rotate()
      .resize(LONGEST_EDGE, LONGEST_EDGE, { fit: 'inside', withoutEnlargement: true })
      .jpeg({ quality: 82 })
      .toBuffer();
    return { bytes: encoded, mediaType: 'image/jpeg' };
  } catch {
    throw new Problem('file-refused', 'The picture is damaged and cannot be read. Take it again.');
  }
}

/** Stores a photo or certificate under the SHA-256 of what is kept; the same bytes are stored once. */
export async function storeFile(db: Database, siteId: string, upload: Buffer): Promise<StoredFile> {
  const { bytes, mediaType } = await kept(upload);
  const hash = createHash('sha256').update(bytes).digest('hex');
  await db.query(
    `INSERT INTO stored_file (site_id, hash, media_type, size, content, stored_at) VALUES ($1, $2, $3, $4, $5, now())
     ON CONFLICT (site_id, hash) DO NOTHING`,
    [siteId, hash, mediaType, bytes.length, bytes],
  );
  return { hash, mediaType, size: bytes.length };
}

/** A stored file whole, for what reads in it. @throws Problem `not-found` */
export async function readFile(
  db: Database,
  siteId: string,
  hash: string,
): Promise<{ mediaType: string; content: Buffer }> {
  const { rows } = await db.query<{ mediaType: string; content: Buffer }>(
    'SELECT media_type AS "mediaType", content FROM stored_file WHERE site_id = $1 AND hash = $2',
    [siteId, hash],
  );
  const file = rows[0];
  if (!file) throw new Problem('not-found', 'There is no such file at this site.');
  return file;
}

const PIECE = 1024 * 1024;

export interface OpenedFile {
  readonly mediaType: string;
  readonly size: number;
  /** read piece by piece: a printed selection may be larger than what many readers at once leave memory for */
  readonly content: Readable;
}

/** A stored file, to be sent on as it is read. @throws Problem `not-found` */
export async function openFile(db: Database, siteId: string, hash: string): Promise<OpenedFile> {
  const { rows } = await db.query<{ mediaType: string; size: number }>(
    'SELECT media_type AS "mediaType", size FROM stored_file WHERE site_id = $1 AND hash = $2',
    [siteId, hash],
  );
  const file = rows[0];
  if (!file) throw new Problem('not-found', 'There is no such file at this site.');
  return { ...file, content: Readable.from(piecesOf(db, siteId, hash, file.size)) };
}

async function* piecesOf(db: Database, siteId: string, hash: string, size: number): AsyncGenerator<Buffer> {
  for (let from = 0; from < size; from += PIECE) {
    const { rows } = await db.query<{ piece: Buffer }>(
      'SELECT substring(content FROM $3 FOR $4) AS piece FROM stored_file WHERE site_id = $1 AND hash = $2',
      [siteId, hash, from + 1, PIECE],
    );
    const piece = rows[0]?.piece;
    if (!piece) throw new Error(`The file ${hash} went away while it was read.`);
    yield piece;
  }
}
