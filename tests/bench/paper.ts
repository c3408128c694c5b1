import { readFileSync } from 'node:fs';
import { mkdtemp, open, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { NodeCompiler } from '@myriaddreamin/typst-ts-node-compiler';
import { joinPdfsTo } from '../../apps/server/src/features/paper/join-pdfs.ts';
import { sheetContent } from '../../apps/server/src/features/paper/joint-sheet/sheet-content.ts';
import type { SheetSource } from '../../apps/server/src/features/paper/joint-sheet/sheet-source.ts';
import { SHEETS_AT_ONCE } from '../../apps/server/src/features/paper/joint-sheet/sheets-job.ts';
import { sheetsDocument, sheetsPdf } from '../../apps/server/src/features/paper/joint-sheet/sheets-pdf.ts';
import { fontFiles } from '../../apps/server/src/features/paper/typesetting/fonts.ts';
import type { Typescript } from '../../apps/server/src/features/paper/typesetting/typesetter.ts';
import { jointOf, makeOf, sourceOf } from '../api/support/sample-sheet.ts';

const SHEETS = 1000;

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

/** As the job does it: each file is set, written and let go of before the next. */
async function printed(sources: readonly SheetSource[]): Promise<{ pages: number; size: number }> {
  const folder = await mkdtemp(join(tmpdir(), 'seatwell-bench-'));
  const file = await open(join(folder, 'selection.pdf'), 'w');
  try {
    async function* files(): AsyncGenerator<Buffer> {
      for (const slice of slices(sources)) {
        const contents = slice.map((source) => sheetContent(source));
        yield (await sheetsPdf(contents, new Map(), 'batch')).bytes;
      }
    }
    const write = async (bytes: Buffer) => void (await file.write(bytes));
    return await joinPdfsTo(write, files(), { title: () => 'selection', newLeaf: true });
  } finally {
    await file.close();
    await rm(folder, { recursive: true, force: true });
  }
}

/** Seconds that the typesetter alone takes for a document, in one thread, nothing prepared and nothing passed on. */
function bare(compiler: NodeCompiler, { template, data, tagged }: Typescript): number {
  const inputs = { data: JSON.stringify(data) };
  const start = performance.now();
  const { result } = compiler.compile({ mainFileContent: template, inputs });
  if (!result) throw new Error('The bare typesetting failed.');
  compiler.pdf(result, { pdfTags: tagged });
  compiler.evictCache(0);
  return (performance.now() - start) / 1000;
}

const documentOf = (slice: readonly SheetSource[]): Promise<Typescript> =>
  sheetsDocument(
    slice.map((source) => sheetContent(source)),
    new Map(),
    'batch',
  );

/**
 * Seconds for a selection of joint sheets from record to PDF, without the database, joined as the job does it;
 * the ratio to bare typesetting of the same data in the same run; the most memory seen meanwhile.
 */
export async function bench(): Promise<object> {
  const sources = selection();
  const fonts = fontFiles();
  const compiler = NodeCompiler.create({
    workspace: dirname(fonts[0] ?? '.'),
    fontArgs: [{ fontBlobs: fonts.map((path) => readFileSync(path)) }],
  });
  await sheetsPdf(
    sources.slice(0, 2).map((source) => sheetContent(source)),
    new Map(),
  );
  bare(compiler, await documentOf(sources.slice(0, 2)));

  const beforeMB = process.memoryUsage().rss / 1e6;
  let peakMB = beforeMB;
  const watch = setInterval(() => {
    peakMB = Math.max(peakMB, process.memoryUsage().rss / 1e6);
  }, 20);
  const start = performance.now();
  const { pages, size } = await printed(sources);
  const seconds = (performance.now() - start) / 1000;
  clearInterval(watch);
  let bareSeconds = 0;
  for (const slice of slices(sources)) bareSeconds += bare(compiler, await documentOf(slice));
  return {
    bench: 'paper',
    sheets: SHEETS,
    pages,
    seconds,
    msPerSheet: (seconds * 1000) / SHEETS,
    bareSeconds,
    ratioToBare: seconds / bareSeconds,
    beforeMB,
    peakMB,
    kBPerSheet: size / SHEETS / 1000,
  };
}
