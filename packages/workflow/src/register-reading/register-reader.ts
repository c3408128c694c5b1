import type { ColumnContext } from './cell-readers.ts';
import { measures } from './cell-readers.ts';
import {
  dateOrderOf,
  decimalMarkOf,
  ratingSystemOf,
  ratingSystemOfHeader,
  sizeSystemOf,
  sizeSystemOfHeader,
} from './column-evidence.ts';
import type { DateOrder } from './date.ts';
import { columnLetter, REGISTER_FIELDS, type RegisterField } from './fields.ts';
import type { FlangeAnswer, LookupFlange } from './fill-from-standard.ts';
import type { DecimalMark } from './number-text.ts';
import type { RatingSystem } from './rating.ts';
import { type ReadColumn, readRow } from './read-row.ts';
import { type Cell, plainText } from './reading.ts';
import type { RegisterInput, RegisterOptions, RowAsk, RowReading, SheetRow } from './register-values.ts';
import type { SizeSystem } from './size.ts';
import { unitOf, unitOfHeader } from './units.ts';

/** How the cells of a column are understood; shown above the preview, so that nothing is taken silently. */
export interface ColumnReading {
  readonly field: RegisterField;
  readonly column: string;
  readonly header: string;
  readonly unit?: string;
  readonly sizeSystem?: SizeSystem;
  readonly ratingSystem?: RatingSystem;
  readonly dateOrder?: DateOrder;
  readonly decimal?: DecimalMark;
}

/** A question with the rows that wait for its answer. */
export interface RegisterQuestion {
  readonly key: string;
  readonly field: RegisterField;
  readonly column: string;
  readonly code: string;
  readonly question: string;
  readonly choices: RowAsk['choices'];
  readonly rowNumbers: readonly number[];
}

export interface DuplicateTag {
  readonly tag: string;
  readonly rowNumbers: readonly number[];
}

export interface RegisterReading {
  readonly columns: readonly ColumnReading[];
  readonly rows: readonly RowReading[];
  /** Each question once, under the widest key that answers it. */
  readonly questions: readonly RegisterQuestion[];
  readonly duplicates: readonly DuplicateTag[];
}

/** Reads row by row, so that a server can pause between slices of a large register. */
export interface RegisterReader {
  readonly columns: readonly ColumnReading[];
  readonly readRow: (row: SheetRow) => RowReading;
}

function answer<T extends string>(
  options: RegisterOptions,
  field: RegisterField,
  code: string,
  allowed: readonly T[],
): T | undefined {
  const given = options.answers?.[`column.${field}.${code}`];
  return allowed.find((value) => value === given);
}

function contextOf(
  field: RegisterField,
  cells: () => readonly Cell[],
  header: Cell,
  options: RegisterOptions,
): ColumnContext {
  const context: { -readonly [Key in keyof ColumnContext]: ColumnContext[Key] } = {};
  const set = <Key extends keyof ColumnContext>(key: Key, value: ColumnContext[Key] | undefined) => {
    if (value !== undefined) context[key] = value;
  };
  // The header goes first: an answer remembered from another sheet must not overrule what this one says.
  if (field === 'size') {
    const asked = answer(options, field, 'size-system', ['NPS', 'DN']) ?? options.sizeSystem;
    set('sizeSystem', sizeSystemOfHeader(header) ?? asked ?? sizeSystemOf(cells()));
  }
  if (field === 'rating') {
    const asked = answer(options, field, 'rating-system', ['class', 'PN']) ?? options.ratingSystem;
    set('ratingSystem', ratingSystemOfHeader(header) ?? asked ?? ratingSystemOf(cells()));
  }
  if (field === 'plannedDate') {
    set(
      'dateOrder',
      answer(options, field, 'date-order', ['dmy', 'mdy', 'ymd']) ?? options.dateOrder ?? dateOrderOf(cells()),
    );
  }
  if (field === 'criticality') set('criticalityLevels', options.criticalityLevels);
  const measure = measures[field];
  if (measure !== undefined) {
    set('decimal', answer(options, field, 'decimal-mark', ['.', ',']) ?? options.decimal ?? decimalMarkOf(cells()));
    const named = options.answers?.[`column.${field}.${measure}-unit`] ?? options.units?.[field];
    set(
      'unit',
      unitOfHeader(plainText(header), measure) ?? (named === undefined ? undefined : unitOf(String(named), measure)),
    );
  }
  return context;
}

function remembered(lookup: LookupFlange): LookupFlange {
  const answers = new Map<string, FlangeAnswer>();
  return (standard, size, rating, boltCount) => {
    const key = `${standard} ${size} ${rating} ${boltCount ?? ''}`;
    const known = answers.get(key) ?? lookup(standard, size, rating, boltCount);
    answers.set(key, known);
    return known;
  };
}

/**
 * Prepares reading a register: looks through its columns for what bare numbers, dates and decimals mean.
 *
 * @param input rows below the header, mapping, headers, options, and the look-up of flanges to fill from
 */
export function registerReader(input: RegisterInput): RegisterReader {
  const options = input.options ?? {};
  const lookup = input.lookupFlange === undefined ? undefined : remembered(input.lookupFlange);
  const columns: ReadColumn[] = [];
  for (const field of REGISTER_FIELDS) {
    const index = input.mapping[field];
    if (index === undefined) continue;
    const cells = () => input.rows.map((row) => row.cells[index] ?? null);
    columns.push({
      field,
      index,
      context: contextOf(field, cells, input.headers?.[index] ?? null, options),
      seen: new Map(),
    });
  }
  return {
    columns: columns.map(({ field, index, context: { unit, criticalityLevels: _, ...context } }) => ({
      field,
      column: columnLetter(index),
      header: plainText(input.headers?.[index] ?? null),
      ...context,
      ...(unit === undefined ? {} : { unit: unit.name }),
    })),
    readRow: (row) => readRow(row, columns, options, lookup),
  };
}

/** True for rows without any mapped content: they are passed over. */
export function isEmptyRow(row: SheetRow): boolean {
  return row.cells.every((cell) => cell === null || (typeof cell === 'string' && plainText(cell) === ''));
}

/** The same tag in another spelling: case and spaces do not make a second joint. */
export function comparableTag(tag: string): string {
  return tag.toUpperCase().replace(/\s+/g, '');
}

/** Tags that stand in more than one row, with those rows. */
export function duplicateTags(rows: readonly RowReading[]): readonly DuplicateTag[] {
  const byTag = new Map<string, { tag: string; rowNumbers: number[] }>();
  for (const { rowNumber, values } of rows) {
    if (values.tag === undefined) continue;
    const entry = byTag.get(comparableTag(values.tag)) ?? { tag: values.tag, rowNumbers: [] };
    entry.rowNumbers.push(rowNumber);
    byTag.set(comparableTag(values.tag), entry);
  }
  return [...byTag.values()].filter((entry) => entry.rowNumbers.length > 1);
}

/** The questions of all rows, each once. */
export function questionsOf(rows: readonly RowReading[]): readonly RegisterQuestion[] {
  const byKey = new Map<string, RegisterQuestion & { rowNumbers: number[] }>();
  for (const { rowNumber, asks } of rows) {
    for (const { key, sharedKey, field, column, code, question, choices } of asks) {
      const widest = sharedKey ?? key;
      const entry = byKey.get(widest) ?? { key: widest, field, column, code, question, choices, rowNumbers: [] };
      entry.rowNumbers.push(rowNumber);
      byKey.set(widest, entry);
    }
  }
  return [...byKey.values()];
}

/**
 * Reads a register from the rows of a sheet: values, bad cells, questions and repeated tags. Pure.
 *
 * @param input rows below the header, mapping, headers, options, and the look-up of flanges to fill from
 */
export function readRegisterRows(input: RegisterInput): RegisterReading {
  const reader = registerReader(input);
  const rows = input.rows.filter((row) => !isEmptyRow(row)).map(reader.readRow);
  return { columns: reader.columns, rows, questions: questionsOf(rows), duplicates: duplicateTags(rows) };
}
