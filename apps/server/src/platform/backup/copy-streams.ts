import { once } from 'node:events';
import type { Socket } from 'node:net';
import type pg from 'pg';

/** The part of pg's connection that COPY speaks (PostgreSQL manual, "Frontend/Backend Protocol", COPY Operations). */
interface CopyConnection {
  readonly stream: Socket;
  query(text: string): void;
  sendCopyFromChunk(chunk: Buffer): void;
  sendCopyFail(reason: string): void;
  endCopyFrom(): void;
}

const HELD_BYTES = 1024 * 1024;

/** Number of rows in the tag of a finished COPY. */
const rowsOf = (tag: { readonly text?: string } | undefined): number => Number(tag?.text?.replace('COPY ', ''));

/**
 * `COPY … TO STDOUT` row by row in PostgreSQL's text form. What the reader has not taken yet is held back in the
 * socket, so that a table of any size passes through little memory.
 * @throws the database's error; leaving the loop early breaks the connection, since the rest cannot be unsaid
 */
export async function* copyOut(client: pg.ClientBase, sql: string): AsyncGenerator<Buffer, void> {
  let waiting: Buffer[] = [];
  let held = 0;
  let ended = false;
  let failed: Error | undefined;
  let wake = () => {};
  let stream: Socket | undefined;
  const copy = {
    submit: (connection: CopyConnection) => {
      stream = connection.stream;
      connection.query(sql);
    },
    handleCopyData: ({ chunk }: { chunk: Buffer }) => {
      // pg reads into one buffer again and again.
      waiting.push(Buffer.from(chunk));
      held += chunk.length;
      if (held > HELD_BYTES) stream?.pause();
      wake();
    },
    handleError: (error: Error) => {
      failed = error;
      ended = true;
      wake();
    },
    handleCommandComplete: () => {},
    handleReadyForQuery: () => {
      ended = true;
      wake();
    },
  };
  client.query(copy as unknown as pg.Submittable);
  try {
    for (;;) {
      const rows = waiting;
      waiting = [];
      held = 0;
      stream?.resume();
      yield* rows;
      if (waiting.length > 0) continue;
      if (ended) break;
      await new Promise<void>((resolve) => {
        wake = resolve;
      });
    }
  } finally {
    if (!ended) stream?.destroy();
  }
  if (failed) throw failed;
}

/**
 * `COPY … FROM STDIN`: sends the parts as fast as the database takes them.
 * @returns the number of rows
 * @throws the database's error, or that of the parts; then nothing of this COPY is kept
 */
export async function copyIn(client: pg.ClientBase, sql: string, parts: AsyncIterable<Buffer>): Promise<number> {
  let begin: (connection: CopyConnection) => void = () => {};
  const begun = new Promise<CopyConnection>((resolve) => {
    begin = resolve;
  });
  let failed: Error | undefined;
  const ended = new Promise<number>((resolve, reject) => {
    let rows = Number.NaN;
    const copy = {
      submit: (connection: CopyConnection) => connection.query(sql),
      handleCopyInResponse: (connection: CopyConnection) => begin(connection),
      handleError: (error: Error) => {
        failed = error;
        reject(error);
      },
      handleCommandComplete: (tag: { text?: string }) => {
        rows = rowsOf(tag);
      },
      handleReadyForQuery: () => resolve(rows),
    };
    client.query(copy as unknown as pg.Submittable);
  });
  // Awaited below; until then a refusal is not an unhandled one.
  ended.catch(() => undefined);
  const connection = await Promise.race([begun, ended]);
  if (typeof connection === 'number') throw new Error(`The database took no rows for: ${sql}`);
  try {
    for await (const part of parts) {
      if (failed) break;
      connection.sendCopyFromChunk(part);
      if (connection.stream.writableNeedDrain) await Promise.race([once(connection.stream, 'drain'), ended]);
    }
  } catch (error) {
    connection.sendCopyFail('the parts ended early');
    await ended.catch(() => undefined);
    throw error;
  }
  connection.endCopyFrom();
  return ended;
}
