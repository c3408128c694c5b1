import { type CellValues, type ColumnContext, readCell } from './cell-readers.ts';
import { completeRow } from './complete-row.ts';
import { columnLetter, type RegisterField } from './fields.ts';
import type { LookupFlange } from './fill-from-standard.ts';
import { type Cell, plainText, plainWords, type Reading } from './reading.ts';
import type { RegisterOptions, RegisterValues, RowAsk, RowProblem, RowReading, SheetRow } from './register-values.ts';

/** A mapped column with all that is known about it. */
export interface ReadColumn {
  readonly field: RegisterField;
  readonly index: number;
  readonly context: ColumnContext;
  /** Readings of text cells that came up before: registers repeat themselves. */
  readonly seen: Map<string, Reading<CellValues>>;
}

/** Words that stand for "nothing entered". */
const blank = /^(-+|—|\.|n\s?\/\s?a|n\.a\.)$/i;
const toBeConfirmed = /^(t\.?b\.?[acdn]\.?|\?+|later|unknown|hold)$/i;

/** Questions that are asked once for the column; the others once for each word. */
const columnCodes = new Set([
  'size-system',
  'rating-system',
  'date-order',
  'decimal-mark',
  'pressure-unit',
  'temperature-unit',
  'length-unit',
]);

function askKey(field: RegisterField, code: string, cell: Cell): string {
  return columnCodes.has(code) ? `column.${field}.${code}` : `word.${field}.${plainWords(cell)}`;
}

function readingOf(column: ReadColumn, cell: Cell): Reading<CellValues> {
  if (typeof cell !== 'string') return readCell(column.field, cell, column.context);
  const before = column.seen.get(cell);
  if (before !== undefined) return before;
  const reading = readCell(column.field, cell, column.context);
  column.seen.set(cell, reading);
  return reading;
}

/** An answered word is read as the answer; answers for a whole column are in its context already. */
function answered(column: ReadColumn, key: string, options: RegisterOptions): Reading<CellValues> | undefined {
  const answer = key.startsWith('word.') ? options.answers?.[key] : undefined;
  return answer === undefined ? undefined : readCell(column.field, answer, column.context);
}

/** Reads one row: its cells by their columns, then what follows from the standard and from the kind of joint. */
export function readRow(
  row: SheetRow,
  columns: readonly ReadColumn[],
  options: RegisterOptions,
  lookup: LookupFlange | undefined,
): RowReading {
  const values: RegisterValues = {};
  const problems: RowProblem[] = [];
  const asks: RowAsk[] = [];
  for (const column of columns) {
    const cell = row.cells[column.index] ?? null;
    const written = plainText(cell);
    if (written === '' || blank.test(written)) continue;
    const at = { field: column.field, column: columnLetter(column.index), value: written };
    if (toBeConfirmed.test(written)) {
      problems.push({
        ...at,
        severity: 'shown',
        code: 'to-be-confirmed',
        message: `"${written}" is left empty here. Enter the value when it is known.`,
      });
      continue;
    }
    let reading = readingOf(column, cell);
    if (reading.ok === undefined) {
      const { code, question, choices } = reading.ask;
      const key = askKey(column.field, code, cell);
      const answer = answered(column, key, options);
      if (answer === undefined || answer.ok === undefined) {
        asks.push({ ...at, code, key, question, choices });
        continue;
      }
      reading = answer;
    }
    if (reading.ok === true) assign(values, column.field, reading.value);
    else problems.push({ ...at, severity: severityOf(reading.code), code: reading.code, message: reading.message });
  }
  noteAbsolute(values, problems, columns);
  return completeRow({ rowNumber: row.rowNumber, values, problems, asks, columns, options, lookup });
}

/** What stands in a column of its own goes before what another cell carried along. */
function assign(values: RegisterValues, field: RegisterField, read: CellValues): void {
  const carried = { ...read, ...values };
  Object.assign(values, carried, field in read ? { [field]: read[field] } : {});
}

function severityOf(code: string): RowProblem['severity'] {
  return code === 'standard-without-data' ? 'shown' : 'error';
}

function noteAbsolute(values: RegisterValues, problems: RowProblem[], columns: readonly ReadColumn[]): void {
  for (const field of ['designPressure', 'testPressure'] as const) {
    const pressure = values[field];
    const column = columns.find((entry) => entry.field === field);
    if (!pressure?.fromAbsolute || column === undefined) continue;
    const { value, unit } = pressure.entered;
    problems.push({
      severity: 'shown',
      field,
      column: columnLetter(column.index),
      value: `${value} ${unit}`,
      code: 'absolute-pressure',
      message: `${value} ${unit} is absolute; it is kept as ${pressure.si} MPa gauge, with an atmosphere of 0.101325 MPa. Check it.`,
    });
  }
}
