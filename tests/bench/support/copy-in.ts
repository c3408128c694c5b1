import type pg from 'pg';

/** The part of pg's connection that COPY FROM STDIN speaks (frontend/backend protocol, "COPY Operations"). */
interface CopyConnection {
  query(text: string): void;
  sendCopyFromChunk(chunk: Buffer): void;
  endCopyFrom(): void;
}

/** Copies parts of text into a table in one COPY. */
export function copyIn(client: pg.Client, sql: string, parts: Iterable<string>): Promise<void> {
  return new Promise((resolve, reject) => {
    let failed: Error | undefined;
    const copy = {
      submit: (connection: CopyConnection) => connection.query(sql),
      handleCopyInResponse: (connection: CopyConnection) => {
        for (const part of parts) connection.sendCopyFromChunk(Buffer.from(part));
        connection.endCopyFrom();
      },
      handleError: (error: Error) => {
        failed = error;
        reject(error);
      },
      handleCommandComplete: () => {},
      handleReadyForQuery: () => {
        if (!failed) resolve();
      },
    };
    client.query(copy as unknown as pg.Submittable);
  });
}
