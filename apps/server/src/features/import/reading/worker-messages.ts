import type { SheetRow } from '@seatwell/workflow';
import type { ReadingFailure, ReadingLimits, SheetList, SheetReading } from './reading-result.ts';

/** Rows that go from the worker to its parent in one message. */
export const rowsPerMessage = 1000;

export type WorkerTask = { readonly name: string; readonly bytes: Uint8Array; readonly limits: ReadingLimits } & (
  | { readonly kind: 'list' }
  | { readonly kind: 'read'; readonly sheet: string }
);

export type WorkerMessage =
  | { readonly kind: 'head'; readonly result: SheetList | SheetReading | ReadingFailure; readonly rowCount: number }
  | { readonly kind: 'rows'; readonly rows: readonly SheetRow[] };
