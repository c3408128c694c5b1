import { readFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { NodeCompiler } from '@myriaddreamin/typst-ts-node-compiler';
import { joinPdfs } from '../../apps/server/src/features/sheets/join-pdfs.ts';
import { sheetContent } from '../../apps/server/src/features/sheets/sheet-content.ts';
import { jointOf, makeOf, sourceOf } from '../../apps/server/src/features/sheets/sheet-for-tests.ts';
import type { SheetSource } from '../../apps/server/src/features/sheets/sheet-source.ts';
import { SHEETS_AT_ONCE } from '../../apps/server/src/features/sheets/sheets-job.ts';
import { sheetsDocument, sheetsPdf } from '../../apps/server/src/features/sheets/sheets-pdf.ts';
import { fontFiles } from '../../apps/server/src/features/sheets/typesetting/fonts.ts';
import type { Typescript } from '../../apps/server/src/features/sheets/typesetting/typesetter.ts';

const SHEETS = 200;

/** Sheets of joints that differ as a selection does: tag, address and bolt count. */
function selection(): SheetSource[] {
  return Array.from({ length: SHEETS }, (_, index) => {
    const make = makeOf();
    const count = [8, 12, 16, 20][index % 4] ?? 8;
    const bolting = { count, thread: '7/8-9 UNC', grade: 'B7', nutGrade: '2H', length_mm: 140 };
    const joint = jointOf(make, { tag: `U41-P-${1000 + index}` }, { bolting });
    return sourceOf({ make, joint, address: `https://plant.example/shutdowns/s/joints/${index}` });
  });
}

const slices = <T>(all: readonly T[]): T[][] =>
  Array.from({ length: Math.ceil(all.length / SHEETS_AT_ONCE) }, (_, index) =>
    all.slice(index * SHEETS_AT_ONCE, (index + 1) * SHEETS_AT_ONCE),
  );

async function printed(sources: readonly SheetSource[]): Promise<{ pages: number; bytes: number }> {
  const pdfs: Buffer[] = [];
  for (const slice of slices(sources)) {
    const contents = slice.map((source) => sheetContent(source));
    pdfs.push((await sheetsPdf(contents, new Map(), 'batch')).bytes);
  }
  const { bytes, pages } = await joinPdfs(pdfs, 'selection');
  return { pages, bytes: bytes.length };
}

/** The same data through the typesetter alone, in one thread, nothing prepared and nothing passed on. */
function bare(compiler: NodeCompiler, documents: readonly Typescript[]): void {
  for (const { template, data, tagged } of documents) {
    const { result } = compiler.compile({ mainFileContent: template, inputs: { data: JSON.stringify(data) } });
    if (!result) throw new Error('The bare typesetting failed.');
    compiler.pdf(result, { pdfTags: tagged });
    compiler.evictCache(0);
  }
}

/**
 * Seconds for a selection of joint sheets from record to PDF, without the database, joined as the job does it;
 * the ratio to bare typesetting of the same data in the same run; the most memory seen meanwhile.
 */
export async function bench(): Promise<object> {
  const sources = selection();
  const documents: Typescript[] = [];
  for (const slice of slices(sources)) {
    const contents = slice.map((source) => sheetContent(source));
    documents.push(await sheetsDocument(contents, new Map(), 'batch'));
  }
  const fonts = fontFiles();
  const compiler = NodeCompiler.create({
    workspace: dirname(fonts[0] ?? '.'),
    fontArgs: [{ fontBlobs: fonts.map((path) => readFileSync(path)) }],
  });
  await sheetsPdf(
    sources.slice(0, 2).map((source) => sheetContent(source)),
    new Map(),
  );
  bare(compiler, documents.slice(0, 1));

  let peak = 0;
  const watch = setInterval(() => {
    peak = Math.max(peak, process.memoryUsage().rss);
  }, 20);
  const start = performance.now();
  const { pages, bytes } = await printed(sources);
  const seconds = (performance.now() - start) / 1000;
  clearInterval(watch);
  const bareStart = performance.now();
  bare(compiler, documents);
  const bareSeconds = (performance.now() - bareStart) / 1000;
  return {
    bench: 'paper',
    sheets: SHEETS,
    pages,
    seconds,
    msPerSheet: (seconds * 1000) / SHEETS,
    bareSeconds,
    ratioToBare: seconds / bareSeconds,
    peakMB: peak / 1e6,
    kBPerSheet: bytes / SHEETS / 1000,
  };
}
