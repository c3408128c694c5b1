import { existsSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { Worker } from 'node:worker_threads';
import { repositoryRoot } from '../../../platform/repository-root.ts';
import { fontFiles } from './fonts.ts';

/** A document to be set: a template and the data that it reads; pictures by the path that the data names. */
export interface Typescript {
  readonly template: string;
  readonly data: object;
  readonly pictures?: readonly { readonly path: string; readonly bytes: Uint8Array }[];
  /** structure for screen readers; a batch that goes to the printer does without, at a sixth of the size */
  readonly tagged: boolean;
}

export interface TypesetPdf {
  readonly bytes: Buffer;
  readonly pages: number;
}

type Answer = { readonly id: number } & (
  | { readonly bytes: Uint8Array; readonly pages: number }
  | { readonly failure: string }
);

interface Waiting {
  readonly resolve: (pdf: TypesetPdf) => void;
  readonly reject: (error: Error) => void;
}

/** Beside the bundle, or one folder up from its chunks, in the built server; else from the source. */
function workerFile(): string {
  for (const place of ['./typeset-worker.js', '../typeset-worker.js']) {
    const url = new URL(place, import.meta.url);
    if (existsSync(url)) return fileURLToPath(url);
  }
  const source = join(repositoryRoot(), 'apps/server/src/features/paper/typesetting/typeset-worker.mjs');
  if (existsSync(source)) return source;
  throw new Error(`typeset-worker.js is missing beside ${import.meta.url}. Build the server again: npm run build.`);
}

/** Sets documents in a thread of its own, which starts with the first and does not keep the process alive. */
class Typesetter {
  #worker: Worker | null = null;
  #next = 0;
  readonly #waiting = new Map<number, Waiting>();

  typeset({ template, data, pictures = [], tagged }: Typescript): Promise<TypesetPdf> {
    const worker = this.#started();
    const id = this.#next++;
    return new Promise((resolve, reject) => {
      this.#waiting.set(id, { resolve, reject });
      worker.ref();
      worker.postMessage({ id, template, data: JSON.stringify(data), pictures, tagged });
    });
  }

  #started(): Worker {
    if (this.#worker) return this.#worker;
    const fonts = fontFiles();
    const worker = new Worker(workerFile(), {
      workerData: { fontFiles: fonts, workspace: dirname(fonts[0] ?? '.') },
    });
    worker.on('message', (answer: Answer) => this.#take(worker, answer));
    worker.on('error', (error) => this.#fail(worker, error));
    worker.on('exit', (code) => this.#fail(worker, new Error(`The typesetting thread ended with ${code}.`)));
    this.#worker = worker;
    return worker;
  }

  #take(worker: Worker, answer: Answer): void {
    const waiting = this.#waiting.get(answer.id);
    this.#waiting.delete(answer.id);
    if (this.#waiting.size === 0) worker.unref();
    if ('failure' in answer) waiting?.reject(new Error(answer.failure));
    else waiting?.resolve({ bytes: Buffer.from(answer.bytes), pages: answer.pages });
  }

  // The next document starts a new thread.
  #fail(worker: Worker, error: Error): void {
    if (this.#worker !== worker) return;
    this.#worker = null;
    for (const { reject } of this.#waiting.values()) reject(error);
    this.#waiting.clear();
  }
}

const typesetter = new Typesetter();

/**
 * Sets a document as PDF, off the thread that answers requests.
 * @throws Error naming what Typst refuses; a document is never half set
 */
export const typeset = (document: Typescript): Promise<TypesetPdf> => typesetter.typeset(document);
