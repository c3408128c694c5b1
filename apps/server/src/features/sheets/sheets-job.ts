import { setImmediate as nextTurn } from 'node:timers/promises';
import { Problem } from '../../platform/errors/problem.ts';
import type { JobWork } from '../../platform/jobs/queue.ts';
import { storeFile } from '../files/store-file.ts';
import type { RecordingParts } from '../recording/record-command.ts';
import { loadShutdown } from '../shutdowns/load-shutdown.ts';
import { joinPdfs } from './join-pdfs.ts';
import { loadPhotos, loadSheetSources, type SheetReading } from './load-sources.ts';
import { type SheetContent, sheetContent } from './sheet-content.ts';
import { sheetsPdf } from './sheets-pdf.ts';

export const SHEETS_JOB = 'print-sheets';

/** Sheets that are set at once: each takes megabytes while its document is open. */
export const SHEETS_AT_ONCE = 50;

export interface SheetsJobInput {
  readonly shutdownId: string;
  readonly jointIds: readonly string[];
  readonly origin: string;
  /** the moment of asking: a repeat of the job prints the same */
  readonly askedAt: string;
}

/** The file of a selection, by its hash at /api/v1/files. */
export interface SheetsFile {
  readonly hash: string;
  readonly size: number;
  readonly pages: number;
  readonly sheets: number;
  readonly firstTag: string;
  readonly lastTag: string;
}

async function setSlice(reading: SheetReading, jointIds: readonly string[], origin: string) {
  const sources = await loadSheetSources(reading, jointIds, { origin });
  const contents: SheetContent[] = [];
  for (const source of sources) {
    contents.push(sheetContent(source));
    // Others are answered between the sheets.
    await nextTurn();
  }
  const { bytes } = await sheetsPdf(contents, await loadPhotos(reading, sources), 'batch');
  return { bytes, tags: sources.map(({ joint }) => joint.tag) };
}

/** Prints the sheets of a selection into one file, with progress; a repeat prints the same bytes. */
export const sheetsJob =
  ({ db }: RecordingParts): JobWork =>
  async ({ siteId, input, progress }): Promise<{ file: SheetsFile }> => {
    const { shutdownId, jointIds, origin, askedAt } = input as SheetsJobInput;
    if (jointIds.length === 0) throw new Problem('bad-input', 'Choose at least one joint to print.');
    const shutdown = await loadShutdown(db, siteId, shutdownId);
    const reading: SheetReading = { db, siteId, shutdown, shutdownId, now: askedAt };
    const pdfs: Buffer[] = [];
    const tags: string[] = [];
    for (let start = 0; start < jointIds.length; start += SHEETS_AT_ONCE) {
      const slice = await setSlice(reading, jointIds.slice(start, start + SHEETS_AT_ONCE), origin);
      pdfs.push(slice.bytes);
      tags.push(...slice.tags);
      await progress(tags.length);
    }
    const [firstTag = '', lastTag = ''] = [tags[0], tags.at(-1)];
    const { bytes, pages } = await joinPdfs(pdfs, `${firstTag} – ${lastTag}`);
    const { hash, size } = await storeFile(db, siteId, bytes);
    return { file: { hash, size, pages, sheets: tags.length, firstTag, lastTag } };
  };
