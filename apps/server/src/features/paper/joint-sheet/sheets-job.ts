import { setImmediate as nextTurn } from 'node:timers/promises';
import { Problem } from '../../../platform/errors/problem.ts';
import type { JobWork } from '../../../platform/jobs/queue.ts';
import { storeWritten } from '../../files/store-written.ts';
import type { RecordingParts } from '../../recording/record-command.ts';
import { loadShutdown } from '../../shutdowns/load-shutdown.ts';
import { joinPdfsTo } from '../join-pdfs.ts';
import type { PaperUnits } from '../paper-figures.ts';
import { formContent } from '../record-form/form-content.ts';
import { formsPdf } from '../record-form/forms-pdf.ts';
import { tagContent } from '../tags/tag-content.ts';
import { CARDS, type TagGeometry } from '../tags/tag-geometry.ts';
import { tagsPdf } from '../tags/tags-pdf.ts';
import type { PaperLanguage } from '../texts/sheet-texts.ts';
import type { TypesetPdf } from '../typesetting/typesetter.ts';
import { loadPhotos, loadSheetSources, type SheetReading } from './load-sources.ts';
import { sheetContent } from './sheet-content.ts';
import type { SheetSource } from './sheet-source.ts';
import { sheetsPdf } from './sheets-pdf.ts';

export const SHEETS_JOB = 'print-sheets';

/** Papers that are printed one a joint. */
export const PAPERS_OF_JOINTS = ['sheet', 'tag', 'record-form'] as const;
export type PaperOfJoints = (typeof PAPERS_OF_JOINTS)[number];

/** Sheets that are set at once: each takes megabytes while its document is open. */
export const SHEETS_AT_ONCE = 20;

export interface SheetsJobInput {
  readonly shutdownId: string;
  readonly jointIds: readonly string[];
  readonly origin: string;
  /** the moment of asking: a repeat of the job prints the same */
  readonly askedAt: string;
  readonly paper: PaperOfJoints;
  readonly language: PaperLanguage;
  readonly units: PaperUnits;
  readonly geometry: TagGeometry;
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

interface Setting {
  readonly reading: SheetReading;
  readonly language: PaperLanguage;
  readonly units: PaperUnits;
  readonly geometry: TagGeometry;
}

/** A content for each source; others are answered between them. */
async function each<T>(sources: readonly SheetSource[], content: (source: SheetSource) => T): Promise<T[]> {
  const contents: T[] = [];
  for (const source of sources) {
    contents.push(content(source));
    await nextTurn();
  }
  return contents;
}

const PAPERS: Readonly<
  Record<PaperOfJoints, (sources: readonly SheetSource[], setting: Setting) => Promise<TypesetPdf>>
> = {
  sheet: async (sources, { reading, language, units }) => {
    const contents = await each(sources, (source) => sheetContent(source, language, units));
    return sheetsPdf(contents, await loadPhotos(reading, sources), 'batch');
  },
  tag: async (sources, { geometry, language, units }) =>
    tagsPdf(await each(sources, (source) => tagContent(source, language, units)), geometry, language),
  'record-form': async (sources, { language, units }) =>
    formsPdf(await each(sources, (source) => formContent(source, language, units)), language, units),
};

/** Where one file ends and the next begins; tags fill their sheets, the first of which may have labels missing. */
function slicesOf(jointIds: readonly string[], paper: PaperOfJoints, { columns, rows, first }: TagGeometry) {
  const onSheet = paper === 'tag' ? columns * rows : 1;
  const missing = paper === 'tag' ? first - 1 : 0;
  const atOnce = Math.ceil(SHEETS_AT_ONCE / onSheet) * onSheet;
  const slices: { readonly jointIds: readonly string[]; readonly first: number }[] = [];
  for (let start = 0; start < jointIds.length; ) {
    const taken = start === 0 ? atOnce - missing : atOnce;
    slices.push({ jointIds: jointIds.slice(start, start + taken), first: start === 0 ? missing + 1 : 1 });
    start += taken;
  }
  return slices;
}

/** Prints a selection into one file, piece by piece, with progress; a repeat prints the same bytes. */
export const sheetsJob =
  ({ db }: RecordingParts): JobWork =>
  async ({ siteId, input, progress }): Promise<{ file: SheetsFile }> => {
    // A job that waited through an upgrade knows of sheets in English only.
    const order = {
      paper: 'sheet',
      language: 'en',
      units: 'SI',
      geometry: CARDS,
      ...(input as object),
    } as SheetsJobInput;
    const { shutdownId, jointIds, origin, askedAt, paper, language, units, geometry } = order;
    if (jointIds.length === 0) throw new Problem('bad-input', 'Choose at least one joint to print.');
    const shutdown = await loadShutdown(db, siteId, shutdownId);
    const reading: SheetReading = { db, siteId, shutdown, shutdownId, now: askedAt };
    const tags: string[] = [];
    async function* printed(): AsyncGenerator<Buffer> {
      for (const { jointIds: some, first } of slicesOf(jointIds, paper, geometry)) {
        const sources = await loadSheetSources(reading, some, { origin });
        const { bytes } = await PAPERS[paper](sources, { reading, language, units, geometry: { ...geometry, first } });
        tags.push(...sources.map(({ joint }) => joint.tag));
        await progress(tags.length);
        yield bytes;
      }
    }
    const title = () => (tags.length === 1 ? `${tags[0]}` : `${tags[0]} – ${tags.at(-1)}`);
    const { hash, size, made } = await storeWritten(db, siteId, 'application/pdf', (write) =>
      joinPdfsTo(write, printed(), { title, newLeaf: paper === 'sheet' }),
    );
    const [firstTag = '', lastTag = ''] = [tags[0], tags.at(-1)];
    return { file: { hash, size, pages: made.pages, sheets: tags.length, firstTag, lastTag } };
  };
