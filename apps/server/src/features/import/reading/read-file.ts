import { Worker } from 'node:worker_threads';
import type { SheetRow } from '@seatwell/workflow';
import { fileKind } from './file-kind.ts';
import {
  type ReadingError,
  type ReadingFailure,
  type ReadingLimits,
  ReadingRefusal,
  readingLimits,
  type SheetList,
  type SheetReading,
  type UploadedFile,
} from './reading-result.ts';
import { locateWorker } from './worker-location.ts';
import type { WorkerMessage, WorkerTask } from './worker-messages.ts';

export interface ReadingOptions {
  readonly limits?: Partial<ReadingLimits>;
  /** Where the built worker lies, if not where the server's build puts it. */
  readonly worker?: URL;
}

type Finished = SheetList | SheetReading | ReadingFailure;

const failure = (code: ReadingError['code'], message: string): ReadingFailure => ({
  ok: false,
  error: { code, message },
});

/** Workers at the same time: each may take its memory limit. */
const mostAtOnce = 2;
let running = 0;
const waiting: (() => void)[] = [];

async function inTurn<T>(work: () => Promise<T>): Promise<T> {
  if (running >= mostAtOnce) await new Promise<void>((resolve) => waiting.push(resolve));
  else running++;
  try {
    return await work();
  } finally {
    const next = waiting.shift();
    if (next === undefined) running--;
    else next();
  }
}

/** Lists the sheets of a CSV or XLSX file. */
export async function listSheets(
  file: UploadedFile,
  options: ReadingOptions = {},
): Promise<SheetList | ReadingFailure> {
  const result = await run({ kind: 'list', name: file.name, bytes: file.bytes }, options);
  return result as SheetList | ReadingFailure;
}

/** Reads one sheet of a CSV or XLSX file; a CSV file has one sheet, whatever it is called. */
export async function readSheet(
  file: UploadedFile,
  sheet: string,
  options: ReadingOptions = {},
): Promise<SheetReading | ReadingFailure> {
  const result = await run({ kind: 'read', name: file.name, bytes: file.bytes, sheet }, options);
  return result as SheetReading | ReadingFailure;
}

type TaskWithoutLimits = WorkerTask extends infer Task
  ? Task extends WorkerTask
    ? Omit<Task, 'limits'>
    : never
  : never;

async function run(task: TaskWithoutLimits, options: ReadingOptions): Promise<Finished> {
  const limits = { ...readingLimits, ...options.limits };
  try {
    // Before a worker starts and the bytes are copied to it.
    fileKind(task.bytes, limits);
  } catch (error) {
    if (error instanceof ReadingRefusal) return failure(error.code, error.message);
    throw error;
  }
  const url = options.worker ?? (await locateWorker());
  return inTurn(() => inWorker(url, { ...task, limits } as WorkerTask));
}

function inWorker(url: URL, task: WorkerTask): Promise<Finished> {
  const { seconds, memoryMb } = task.limits;
  const worker = new Worker(url, {
    workerData: task,
    resourceLimits: { maxOldGenerationSizeMb: memoryMb },
    // The worker needs nothing of the server's surroundings: no settings, no secrets.
    env: {},
    execArgv: [],
  });
  return new Promise<Finished>((resolve) => {
    const rows: SheetRow[] = [];
    let head: Extract<WorkerMessage, { kind: 'head' }> | undefined;
    const timer = setTimeout(
      () =>
        finish(
          failure(
            'time-out',
            `Reading took more than ${seconds} s and was stopped. Split the file, or save the register alone as a new file.`,
          ),
        ),
      seconds * 1000,
    );
    const finish = (result: Finished) => {
      clearTimeout(timer);
      void worker.terminate();
      resolve(result);
    };
    worker.on('message', (message: WorkerMessage) => {
      if (message.kind === 'head') head = message;
      else for (const row of message.rows) rows.push(row);
      if (head === undefined || rows.length < head.rowCount) setImmediate(() => worker.postMessage('more'));
      else finish('rows' in head.result ? { ...head.result, rows } : head.result);
    });
    worker.on('error', (error: NodeJS.ErrnoException) => {
      finish(
        error.code === 'ERR_WORKER_OUT_OF_MEMORY'
          ? failure(
              'too-much-memory',
              `Reading needs more than ${memoryMb} MB of memory and was stopped. Split the file, or save the register alone as a new file.`,
            )
          : failure(
              'reading-failed',
              `The file could not be read (${error.message}). Save the register again as XLSX or CSV.`,
            ),
      );
    });
    worker.on('exit', () =>
      finish(failure('reading-failed', 'Reading ended without a result. Save the register again as XLSX or CSV.')),
    );
  });
}
