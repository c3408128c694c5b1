// Entry of the worker that reads files: it runs apart so that its memory and time can be limited.
import { parentPort, workerData } from 'node:worker_threads';
import { fileKind } from './file-kind.ts';
import { listCsv, readCsv } from './read-csv.ts';
import { listXlsx, readXlsx } from './read-xlsx.ts';
import { type ReadingFailure, ReadingRefusal, type SheetList, type SheetReading } from './reading-result.ts';
import { rowsPerMessage, type WorkerMessage, type WorkerTask } from './worker-messages.ts';

const task = workerData as WorkerTask;

async function answer(): Promise<SheetList | SheetReading | ReadingFailure> {
  const { bytes, name, limits } = task;
  try {
    const kind = fileKind(bytes, limits);
    const buffer = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);
    if (task.kind === 'list') return kind === 'csv' ? listCsv(name, bytes) : listXlsx(buffer, limits);
    return kind === 'csv' ? readCsv(name, bytes, limits) : await readXlsx(buffer, task.sheet, limits);
  } catch (error) {
    if (error instanceof ReadingRefusal) return { ok: false, error: { code: error.code, message: error.message } };
    throw error;
  }
}

const post = (message: WorkerMessage) => parentPort?.postMessage(message);
const result = await answer();
if (result.ok && 'rows' in result) {
  const { rows, ...head } = result;
  post({ kind: 'head', result: { ...head, rows: [] }, rowCount: rows.length });
  // The parent asks for each slice, so that taking in a large sheet never holds up its other work.
  let next = 0;
  parentPort?.on('message', () => {
    post({ kind: 'rows', rows: rows.slice(next, next + rowsPerMessage) });
    next += rowsPerMessage;
    if (next >= rows.length) parentPort?.close();
  });
  if (rows.length === 0) parentPort?.close();
} else {
  post({ kind: 'head', result, rowCount: 0 });
}
