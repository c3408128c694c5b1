import { Problem } from '../../platform/errors/problem.ts';
import type { JobWork } from '../../platform/jobs/queue.ts';
import { storeFile } from '../files/store-file.ts';
import type { RecordingParts } from '../recording/record-command.ts';
import { loadShutdown } from '../shutdowns/load-shutdown.ts';
import { loadPhotos, loadSheetSources, type SheetReading } from './load-sources.ts';
import { sheetContent } from './sheet-content.ts';
import { sheetsPdf } from './sheets-pdf.ts';

export const SHEETS_JOB = 'print-sheets';

/** Sheets in one file: more take memory with each, and a printer that stops repeats less. */
export const SHEETS_PER_FILE = 50;

export interface SheetsJobInput {
  readonly shutdownId: string;
  readonly jointIds: readonly string[];
  readonly origin: string;
  /** the moment of asking: a repeat of the job prints the same */
  readonly askedAt: string;
}

/** A file of sheets, by its hash at /api/v1/files. */
export interface SheetsFile {
  readonly hash: string;
  readonly size: number;
  readonly pages: number;
  readonly sheets: number;
  readonly firstTag: string;
  readonly lastTag: string;
}

async function printSlice(reading: SheetReading, jointIds: readonly string[], origin: string): Promise<SheetsFile> {
  const sources = await loadSheetSources(reading, jointIds, { origin });
  const { bytes, pages } = await sheetsPdf(
    sources.map((source) => sheetContent(source)),
    await loadPhotos(reading, sources),
  );
  const { hash, size } = await storeFile(reading.db, reading.siteId, bytes);
  const tags = sources.map(({ joint }) => joint.tag);
  return { hash, size, pages, sheets: sources.length, firstTag: tags[0] ?? '', lastTag: tags.at(-1) ?? '' };
}

/** Prints the sheets of a selection into files, with progress; a repeat finds the files that it has stored. */
export const sheetsJob =
  ({ db }: RecordingParts): JobWork =>
  async ({ siteId, input, progress }) => {
    const { shutdownId, jointIds, origin, askedAt } = input as SheetsJobInput;
    if (jointIds.length === 0) throw new Problem('bad-input', 'Choose at least one joint to print.');
    const shutdown = await loadShutdown(db, siteId, shutdownId);
    const reading: SheetReading = { db, siteId, shutdown, shutdownId, now: askedAt };
    const files: SheetsFile[] = [];
    for (let start = 0; start < jointIds.length; start += SHEETS_PER_FILE) {
      const slice = jointIds.slice(start, start + SHEETS_PER_FILE);
      files.push(await printSlice(reading, slice, origin));
      await progress(start + slice.length);
    }
    return { files };
  };
