import { type CellValues, type ColumnContext, readCell } from './cell-readers.ts';
import { completeRow } from './complete-row.ts';
import { columnLetter, type RegisterField } from './fields.ts';
import type { LookupFlange } from './fill-from-standard.ts';
import { type Cell, plainText, plainWords, type Reading, refuse } from './reading.ts';
import type { RegisterOptions, RegisterValues, RowAsk, RowProblem, RowReading, SheetRow } from './register-values.ts';

/** A mapped column with all that is known about it. */
export interface ReadColumn {
  readonly field: RegisterField;
  readonly index: number;
  readonly context: ColumnContext;
  /** Cells that came up before: registers repeat themselves. */
  readonly seen: Map<string | number, KnownCell>;
}

/** A cell with its plain text; without a reading where nothing is entered or it is to be confirmed. */
interface KnownCell {
  readonly written: string;
  readonly reading?: Reading<CellValues>;
}

/** Words that stand for "nothing entered". */
const blank = /^(-+|—|\.|n\s?\/\s?a|n\.a\.)$/i;
const toBeConfirmed = /^(t\.?b\.?[acdn]\.?|\?+|later|unknown|hold)$/i;

/** What a sheet shows where a formula failed. */
const sheetError = /^#(REF!|N\/A|VALUE!|DIV\/0!|NAME\?|NUM!|NULL!|SPILL!|CALC!|####*)$/i;

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

/** Tags and remarks hardly repeat: beyond this many different cells remembering costs more than it saves. */
const mostRemembered = 5000;

function readingOf(column: ReadColumn, cell: Cell, written: string): Reading<CellValues> {
  if (!sheetError.test(written)) return readCell(column.field, cell, column.context);
  return refuse(
    'sheet-error',
    `The sheet shows ${written} here: its formula failed. Correct the formula or type the value.`,
  );
}

function known(column: ReadColumn, cell: Cell): KnownCell {
  const repeats = typeof cell === 'string' || typeof cell === 'number';
  const before = repeats ? column.seen.get(cell) : undefined;
  if (before !== undefined) return before;
  const written = plainText(cell);
  const empty = written === '' || blank.test(written) || toBeConfirmed.test(written);
  const found: KnownCell = empty ? { written } : { written, reading: readingOf(column, cell, written) };
  if (repeats && column.seen.size < mostRemembered) column.seen.set(cell, found);
  return found;
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
    if (cell === null) continue;
    const { written, reading: first } = known(column, cell);
    if (first === undefined && !toBeConfirmed.test(written)) continue;
    if (first?.ok === true) {
      assign(values, column.field, first.value);
      continue;
    }
    const at = { field: column.field, column: columnLetter(column.index), value: written };
    if (first === undefined) {
      problems.push({
        ...at,
        severity: 'shown',
        code: 'to-be-confirmed',
        message: `"${written}" is left empty here. Enter the value when it is known.`,
      });
      continue;
    }
    let reading: Reading<CellValues> = first;
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
  const target: Record<string, unknown> = values as Record<string, unknown>;
  for (const key in read) {
    if (key === field || target[key] === undefined) target[key] = read[key as RegisterField];
  }
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
