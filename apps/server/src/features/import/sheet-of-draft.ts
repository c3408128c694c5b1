import type { Database, Transaction } from '../../platform/database/pool.ts';
import { readFile } from '../files/store-file.ts';
import { type Draft, fileRefused } from './drafts.ts';
import { readSheet } from './reading/read-file.ts';
import type { SheetReading } from './reading/reading-result.ts';

// The sheet that was read last: choices change many times over one file, and parsing it takes longest.
let last: { readonly key: string; readonly reading: SheetReading } | undefined;
const LARGEST_KEPT_ROWS = 20_000;

/** The rows of the draft's sheet. @throws Problem `file-refused` with the reading's code */
export async function sheetOfDraft(
  db: Database | Transaction,
  siteId: string,
  draft: Draft,
  sheet: string,
): Promise<SheetReading> {
  const key = `${siteId} ${draft.fileHash} ${sheet}`;
  if (last?.key === key) return last.reading;
  const { content } = await readFile(db as Database, siteId, draft.fileHash);
  const reading = await readSheet({ name: draft.fileName, bytes: content }, sheet);
  if (!reading.ok) throw fileRefused(reading.error);
  last = reading.rows.length <= LARGEST_KEPT_ROWS ? { key, reading } : undefined;
  return reading;
}
