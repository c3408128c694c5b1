import { dirname } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { ImportAnswer, ImportDraft, ImportPreview, ImportStarted } from '@seatwell/contract';
import { parse } from 'csv-parse/sync';
import { stringify } from 'csv-stringify/sync';
import pg from 'pg';
import { uuidv7 } from 'uuidv7';
import { build } from 'vite';
import { sampleHeaders, sampleRows } from '../../apps/server/src/features/import/sample-register.ts';
import { type ListedJoint, listJoint } from '../api/support/shutdown.ts';
import { type BenchShutdown, openBenchShutdown, send } from './support/bench-shutdown.ts';
import { copyIn } from './support/copy-in.ts';
import { percentile, rounded, summary } from './support/statistics.ts';

const ROWS = 50_000;
const OTHERS = 4;
const PAUSE_MS = 25;

/**
 * The import of 50,000 rows from the upload to the end of its one transaction, beside the least that it can cost:
 * parsing the same file and copying its cells into a bare table. Meanwhile other users place holds on other joints.
 */
export async function bench(): Promise<object> {
  await buildWorkerBesideBundle();
  const plant = await openBenchShutdown();
  plant.shutdown.plant.now = new Date();
  const joints: ListedJoint[] = [];
  for (let index = 0; index < 40; index += 1) joints.push(await listJoint(plant.shutdown));
  const file = registerOf(ROWS);
  const floor_s = await parseAndCopy(plant.databaseUrl, file);

  const alone = holds(plant, joints);
  await new Promise((resolve) => setTimeout(resolve, 4000));
  const before = await alone.stop();

  const meanwhile = holds(plant, joints);
  const steps = await importAll(plant, file);
  const during = await meanwhile.stop();
  await plant.close();
  const total_s = steps.upload_s + steps.preview_s + steps.record_s;
  return {
    rows: ROWS,
    megabytes: rounded(file.length / 1e6, 1),
    upload_s: rounded(steps.upload_s),
    preview_s: rounded(steps.preview_s),
    record_s: rounded(steps.record_s),
    total_s: rounded(total_s),
    parseAndCopy_s: rounded(floor_s),
    ratio: rounded(total_s / floor_s),
    ratio_record: rounded(steps.record_s / floor_s),
    othersAlone: summary(before.times_ms, before.seconds),
    othersMeanwhile: summary(during.times_ms, during.seconds),
    othersWorst_ms: rounded(percentile(during.times_ms, 1)),
  };
}

/** The reading worker, where the bundle of this bench looks for it. */
async function buildWorkerBesideBundle(): Promise<void> {
  const out = dirname(fileURLToPath(import.meta.url));
  const root = fileURLToPath(new URL('../../..', import.meta.url));
  await build({
    root,
    configFile: false,
    logLevel: 'warn',
    ssr: { noExternal: [/^@seatwell\//] },
    build: {
      ssr: `${root}/apps/server/src/features/import/reading/import-worker.ts`,
      outDir: out,
      emptyOutDir: false,
      minify: false,
      rollupOptions: { output: { entryFileNames: 'import-worker.js' } },
    },
  });
}

/** The sample register over and over, each row with a tag of its own. */
function registerOf(rows: number): Buffer {
  const cells = Array.from({ length: rows }, (_, index) => {
    const [, ...rest] = sampleRows[index % sampleRows.length] ?? [];
    return [`B-${String(index).padStart(6, '0')}`, ...rest];
  });
  return Buffer.from(stringify([[...sampleHeaders], ...cells]));
}

async function parseAndCopy(databaseUrl: string, file: Buffer): Promise<number> {
  const client = new pg.Client({ connectionString: databaseUrl });
  await client.connect();
  const columns = sampleHeaders.map((_, index) => `c${index} text`).join(', ');
  await client.query(`CREATE TABLE bare_register (${columns})`);
  const start = performance.now();
  const [, ...rows] = parse(file) as string[][];
  const parts = function* () {
    for (let from = 0; from < rows.length; from += 1000) yield stringify(rows.slice(from, from + 1000));
  };
  await copyIn(client, 'COPY bare_register FROM STDIN WITH (FORMAT csv)', parts());
  const seconds = (performance.now() - start) / 1000;
  const copied = await client.query('SELECT count(*)::int AS n FROM bare_register');
  if (copied.rows[0].n !== rows.length) throw new Error(`${copied.rows[0].n} of ${rows.length} rows were copied.`);
  await client.end();
  return seconds;
}

async function importAll({ url, cookie, shutdown }: BenchShutdown, file: Buffer) {
  const imports = `${url}/api/v1/shutdowns/${shutdown.shutdownId}/imports`;
  const timed = async <T>(work: () => Promise<T>): Promise<[T, number]> => {
    const start = performance.now();
    return [await work(), (performance.now() - start) / 1000];
  };
  const [draft, upload_s] = await timed(async () => {
    const body = new FormData();
    body.append('file', new Blob([new Uint8Array(file)]), 'register.csv');
    const answer = await fetch(imports, { method: 'POST', body, headers: { cookie } });
    if (!answer.ok) throw new Error(`${answer.status}: ${await answer.text()}`);
    return (await answer.json()) as ImportDraft;
  });
  const base = `${imports}/${draft.importId}`;
  const [preview, preview_s] = await timed(async () => {
    const choices = { sheet: draft.sheets[0]?.name ?? '', newCrewCompany: 'Contractor' };
    return JSON.parse(await send(`${base}/choices`, cookie, 'PUT', choices)) as ImportPreview;
  });
  if (preview.counts.new !== ROWS) throw new Error(`The preview has ${JSON.stringify(preview.counts)}.`);
  const [answer, record_s] = await timed(async () => {
    const { jobId } = JSON.parse(
      await send(`${base}/confirm`, cookie, 'POST', {
        eventId: uuidv7(),
        previewId: preview.previewId,
        deviceTime: new Date().toISOString(),
      }),
    ) as ImportStarted;
    for (;;) {
      const job = JSON.parse(await send(`${url}/api/v1/jobs/${jobId}`, cookie, 'GET')) as {
        state: string;
        result: ImportAnswer;
      };
      if (job.state === 'failed') throw new Error(`The import failed: ${JSON.stringify(job.result)}`);
      if (job.state === 'done') return job.result;
      await new Promise((resolve) => setTimeout(resolve, 100));
    }
  });
  if (answer.listed !== ROWS) throw new Error(`${answer.listed} of ${ROWS} joints were listed.`);
  return { upload_s, preview_s, record_s };
}

/** Other users: each places a hold on one of its own joints, again and again, until told to stop. */
function holds({ url, cookie, shutdown }: BenchShutdown, joints: readonly ListedJoint[]) {
  const times_ms: number[] = [];
  const begin = performance.now();
  let stopped = false;
  const client = async (number: number) => {
    for (let round = 0; !stopped; round += 1) {
      const joint = joints[(number + round * OTHERS) % joints.length];
      if (!joint) throw new Error('The bench has no joints.');
      const start = performance.now();
      await send(`${url}/api/v1/shutdowns/${shutdown.shutdownId}/commands/hold-placed`, cookie, 'POST', {
        eventId: uuidv7(),
        v: 1,
        subjectId: joint.jointId,
        deviceTime: new Date().toISOString(),
        payload: { holdId: joint.makeId, reason: 'bench', releasedBy: 'coordinator' },
      });
      times_ms.push(performance.now() - start);
      await new Promise((resolve) => setTimeout(resolve, PAUSE_MS));
    }
  };
  const running = Promise.all(Array.from({ length: OTHERS }, (_, number) => client(number)));
  return {
    stop: async () => {
      stopped = true;
      await running;
      return { times_ms, seconds: (performance.now() - begin) / 1000 };
    },
  };
}
