import { createHash } from 'node:crypto';
import type { ImportAnswer, ImportChoices, ImportDraft, ImportPreview } from '@seatwell/contract';
import { uuidv7 } from 'uuidv7';
import type { Database, Transaction } from '../../platform/database/pool.ts';
import { Problem } from '../../platform/errors/problem.ts';
import type { Actor } from '../../platform/sign-in/sessions.ts';
import type { Creations } from './named-things.ts';
import { fileKind } from './reading/file-kind.ts';
import { listSheets } from './reading/read-file.ts';
import {
  type ReadingError,
  ReadingRefusal,
  readingLimits,
  type SheetList,
  type UploadedFile,
} from './reading/reading-result.ts';

const MEDIA_TYPES = {
  csv: 'text/csv',
  xlsx: 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet',
} as const;

/** What the preview keeps beside what it shows: the things that confirming creates. */
export interface StoredPreview {
  readonly shown: ImportPreview;
  readonly creations: Creations;
  readonly assigned: number;
}

export interface Draft {
  readonly importId: string;
  readonly shutdownId: string;
  readonly fileName: string;
  readonly fileHash: string;
  readonly choices: { readonly list: ImportDraft; readonly chosen: ImportChoices | null };
  readonly preview: StoredPreview | null;
}

/** A file that cannot be read as a register, with the reading's own code beside its message. */
export const fileRefused = ({ code, message }: ReadingError): Problem =>
  new Problem('file-refused', message, [{ path: 'file', code, message }]);

function kindOf(bytes: Uint8Array): 'csv' | 'xlsx' {
  try {
    return fileKind(bytes, readingLimits);
  } catch (error) {
    if (error instanceof ReadingRefusal) throw fileRefused({ code: error.code, message: error.message });
    throw error;
  }
}

async function sheetsOf(file: UploadedFile): Promise<SheetList> {
  const list = await listSheets(file);
  if (!list.ok) throw fileRefused(list.error);
  return list;
}

/**
 * Keeps an uploaded register as a draft: bytes by their hash, type by what they are. The register is not touched.
 * @throws Problem `file-refused` with the reading's code
 */
export async function createDraft(
  db: Database,
  actor: Actor,
  shutdownId: string,
  file: { readonly name: string; readonly bytes: Buffer },
): Promise<ImportDraft> {
  const kind = kindOf(file.bytes);
  const { sheets } = await sheetsOf(file);
  const fileHash = createHash('sha256').update(file.bytes).digest('hex');
  const draft: ImportDraft = {
    importId: uuidv7(),
    fileName: file.name,
    size: file.bytes.length,
    format: kind,
    sheets: sheets.map(({ name, hidden }) => ({ name, hidden })),
  };
  await db.query(
    `INSERT INTO stored_file (site_id, hash, media_type, size, content, stored_at) VALUES ($1, $2, $3, $4, $5, now())
     ON CONFLICT (site_id, hash) DO NOTHING`,
    [actor.siteId, fileHash, MEDIA_TYPES[kind], file.bytes.length, file.bytes],
  );
  await db.query(
    `INSERT INTO import_draft (site_id, import_id, shutdown_id, account_id, file_name, file_hash, choices, preview, created_at)
     VALUES ($1, $2, $3, $4, $5, $6, $7, NULL, now())`,
    [
      actor.siteId,
      draft.importId,
      shutdownId,
      actor.accountId,
      file.name,
      fileHash,
      JSON.stringify({ list: draft, chosen: null }),
    ],
  );
  return draft;
}

/**
 * A draft of this shutdown; locked where a change is to come, so that two previews of it do not cross.
 * @throws Problem `not-found`: another shutdown's import is unknown here
 */
export async function loadDraft(
  db: Database | Transaction,
  siteId: string,
  shutdownId: string,
  importId: string,
  lock: '' | 'FOR UPDATE' = '',
): Promise<Draft> {
  const { rows } = await db.query<Draft>(
    `SELECT import_id AS "importId", shutdown_id AS "shutdownId", file_name AS "fileName", file_hash AS "fileHash",
       choices, preview FROM import_draft WHERE site_id = $1 AND shutdown_id = $2 AND import_id = $3 ${lock}`,
    [siteId, shutdownId, importId],
  );
  const draft = rows[0];
  if (!draft) throw new Problem('not-found', `This shutdown has no import ${importId}. Choose the file again.`);
  return draft;
}

export async function storePreview(
  tx: Transaction,
  siteId: string,
  draft: Draft,
  chosen: ImportChoices,
  preview: StoredPreview,
): Promise<void> {
  await tx.query('UPDATE import_draft SET choices = $3, preview = $4 WHERE site_id = $1 AND import_id = $2', [
    siteId,
    draft.importId,
    JSON.stringify({ ...draft.choices, chosen }),
    JSON.stringify(preview),
  ]);
}

/** Notes at the draft what was made of it, in the transaction of the import. */
export async function noteImported(
  tx: Transaction,
  siteId: string,
  importId: string,
  answer: ImportAnswer,
): Promise<void> {
  await tx.query(
    `UPDATE import_draft SET preview = jsonb_set(preview, '{shown,imported}', $3) WHERE site_id = $1 AND import_id = $2`,
    [siteId, importId, JSON.stringify(answer)],
  );
}
