import type { Cell, SheetRow } from '@seatwell/workflow';

/** Why a file could not be read. */
export type ReadingErrorCode =
  | 'file-empty'
  | 'file-too-large'
  | 'not-a-spreadsheet'
  | 'damaged'
  | 'bomb-like'
  | 'encrypted'
  | 'old-xls'
  | 'sheet-not-found'
  | 'too-many-rows'
  | 'too-many-columns'
  | 'too-much-memory'
  | 'time-out'
  | 'reading-failed';

export interface ReadingError {
  readonly code: ReadingErrorCode;
  /** What, the value, the limit, the remedy: for the person who chose the file. */
  readonly message: string;
}

/** What a decoded text file was taken for; shown so that it can be seen and changed. */
export interface TextFormat {
  readonly encoding: TextEncodingName;
  readonly delimiter: string;
}
export type TextEncodingName = 'utf-8' | 'utf-16le' | 'utf-16be' | 'windows-1252';

export interface SheetInfo {
  readonly name: string;
  readonly hidden: boolean;
}

export interface SheetList {
  readonly ok: true;
  readonly format: 'csv' | 'xlsx';
  readonly sheets: readonly SheetInfo[];
  readonly text?: TextFormat;
}

/** Something about a cell or range that its value does not show. */
export interface CellNote {
  /** `B7`, or a range `A5:A9`. */
  readonly cells: string;
  readonly code: 'merged' | 'formula-error' | 'formula-without-value';
  readonly message: string;
}

export interface SheetReading {
  readonly ok: true;
  readonly sheet: string;
  /** Rows that hold anything, with their number in the sheet; trailing empty cells are left out. */
  readonly rows: readonly SheetRow[];
  /** Number of columns of the widest row. */
  readonly width: number;
  readonly notes: readonly CellNote[];
  readonly text?: TextFormat;
}

export interface ReadingFailure {
  readonly ok: false;
  readonly error: ReadingError;
}

export interface UploadedFile {
  readonly name: string;
  readonly bytes: Uint8Array;
}

export interface ReadingLimits {
  readonly fileBytes: number;
  /** Sum of the uncompressed sizes of all parts of a workbook. */
  readonly unzippedBytes: number;
  /** Uncompressed to compressed size, judged above 20 MB: sheets reach 10 to 60. */
  readonly ratio: number;
  readonly rows: number;
  readonly columns: number;
  readonly seconds: number;
  /** Heap of the worker in MB. */
  readonly memoryMb: number;
}

/** Enough for 200,000 joints; far below what a machine of 4 GB can bear. */
export const readingLimits: ReadingLimits = {
  fileBytes: 40 * 1024 * 1024,
  unzippedBytes: 400 * 1024 * 1024,
  ratio: 150,
  rows: 200_000,
  columns: 300,
  seconds: 90,
  memoryMb: 1024,
};

/** Thrown inside the worker; leaves it as a typed failure. */
export class ReadingRefusal extends Error {
  readonly code: ReadingErrorCode;

  constructor(code: ReadingErrorCode, message: string, options?: ErrorOptions) {
    super(message, options);
    this.name = 'ReadingRefusal';
    this.code = code;
  }
}

/** Bytes in megabytes for messages: `12.5 MB`. */
export function megabytes(bytes: number): string {
  return `${Number((bytes / 1024 / 1024).toFixed(1))} MB`;
}

/** Rows without their empty ends, empty ones left out, within the limits. */
export function compactRows(rows: readonly (readonly Cell[])[], limits: ReadingLimits): SheetRow[] {
  const kept: SheetRow[] = [];
  rows.forEach((cells, index) => {
    let length = cells.length;
    while (length > 0 && (cells[length - 1] === null || cells[length - 1] === '')) length--;
    if (length === 0) return;
    if (length > limits.columns) {
      throw new ReadingRefusal(
        'too-many-columns',
        `Row ${index + 1} has ${length} columns, at most ${limits.columns} are read. Delete what lies beside the register.`,
      );
    }
    if (kept.length === limits.rows) {
      throw new ReadingRefusal(
        'too-many-rows',
        `The sheet has more than ${limits.rows} rows. Split it into several files.`,
      );
    }
    kept.push({ rowNumber: index + 1, cells: length === cells.length ? cells : cells.slice(0, length) });
  });
  return kept;
}
