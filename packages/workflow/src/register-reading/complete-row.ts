import { columnLetter, type RegisterField } from './fields.ts';
import {
  comparableThread,
  type FlangeAnswer,
  type LookupFlange,
  sizeForStandard,
  standardByRating,
} from './fill-from-standard.ts';
import type { ReadColumn } from './read-row.ts';
import type { RegisterOptions, RegisterValues, RowAsk, RowProblem, RowReading } from './register-values.ts';
import type { FlangeStandard } from './standard.ts';

interface Row {
  readonly rowNumber: number;
  readonly values: RegisterValues;
  readonly problems: RowProblem[];
  readonly asks: RowAsk[];
  readonly columns: readonly ReadColumn[];
  readonly options: RegisterOptions;
  readonly lookup: LookupFlange | undefined;
}

/** Kinds whose flanges are made to a drawing: a standard counts for them only where the register names it. */
const toDrawing = new Set(['girth', 'manway', 'compact-flange', 'clamp-connector']);

/** Adds to a row what follows from its kind and from the flange standard, and says what is missing or contradicts. */
export function completeRow(row: Row): RowReading {
  const { values, problems, asks } = row;
  const filled: RegisterField[] = [];
  if (values.tag === undefined && !mentioned(row, 'tag')) {
    problems.push({
      ...at(row, 'tag'),
      severity: 'error',
      code: 'tag-missing',
      message: 'The joint has no tag. Enter one; the tag is how it is found again.',
    });
  }
  fillKind(row, filled);
  fillStandard(row, filled);
  fillBolting(row, filled);
  fillGasketCount(row, filled);
  return { rowNumber: row.rowNumber, values, filled, problems, asks };
}

/** Where a field stands in this row; a field without a column points at no column. */
function at(row: Row, field: RegisterField): { field: RegisterField; column: string; value: string } {
  const column = row.columns.find((entry) => entry.field === field);
  const value = row.values[field];
  return {
    field,
    column: column === undefined ? '' : columnLetter(column.index),
    value: value === undefined ? '' : String(value),
  };
}

/** The cell of a field holds something, though perhaps refused or asked: then nothing is filled in its place. */
function mentioned(row: Row, field: RegisterField): boolean {
  return (
    row.values[field] !== undefined ||
    row.problems.some((entry) => entry.field === field) ||
    row.asks.some((entry) => entry.field === field)
  );
}

function fillKind(row: Row, filled: RegisterField[]): void {
  if (mentioned(row, 'kind')) return;
  const ring = row.values.facing === 'ring-joint' || row.values.gasketFamily === 'ring-joint';
  row.values.kind = ring ? 'ring-joint' : 'flange-pair';
  filled.push('kind');
}

function fillStandard(row: Row, filled: RegisterField[]): void {
  const { size, rating, kind } = row.values;
  if (
    size === undefined ||
    rating === undefined ||
    mentioned(row, 'standard') ||
    kind === undefined ||
    toDrawing.has(kind)
  )
    return;
  const found = standardByRating(size, rating, row.options.defaultStandard);
  if (found === undefined) return;
  if ('standard' in found) {
    row.values.standard = found.standard;
    filled.push('standard');
    return;
  }
  const answer = answerOf(row, 'standard', 'b16.47');
  const chosen = found.choices.find((choice) => choice.value === answer);
  if (chosen !== undefined) {
    row.values.standard = chosen.value;
    filled.push('standard');
  } else
    ask(
      row,
      'standard',
      'b16.47',
      'standard-series',
      `Which series of ASME B16.47 are flanges above NPS 24 of?`,
      found.choices,
    );
}

function fillBolting(row: Row, filled: RegisterField[]): void {
  const { size, rating, standard } = row.values;
  if (row.lookup === undefined || size === undefined || rating === undefined || standard === undefined) return;
  const key = sizeForStandard(standard, size);
  if (key === undefined) {
    shown(
      row,
      'size',
      'flange-not-in-table',
      `${standard} has no ${size}. Correct the size, or enter bolt count and thread in the sheet.`,
    );
    return;
  }
  const open = row.lookup(standard, key, rating);
  const flange = settleCount(row, standard, key, rating, open);
  if (flange === undefined) return;
  if (!flange.found) {
    shown(row, 'size', flange.code, flange.message);
    return;
  }
  fillOrCompare(row, filled, 'boltCount', flange.boltCount, `${standard} ${key} ${rating}`);
  fillOrCompare(row, filled, 'boltThread', flange.boltThread, `${standard} ${key} ${rating}`);
}

/** Where the standard leaves the bolt count open, it comes from the sheet or from an answer; otherwise it is asked. */
function settleCount(
  row: Row,
  standard: FlangeStandard,
  size: string,
  rating: string,
  open: FlangeAnswer,
): FlangeAnswer | undefined {
  if (open.found || open.code !== 'bolt-count-must-be-given') return open;
  const counts = open.boltCounts ?? [4, 8];
  if (row.values.boltCount !== undefined) return row.lookup!(standard, size, rating, row.values.boltCount);
  if (mentioned(row, 'boltCount')) return undefined;
  const shared = `${standard}.${size}`;
  const answer = counts.find((count) => count === Number(answerOf(row, 'boltCount', shared)));
  if (answer !== undefined) {
    row.values.boltCount = answer;
    return row.lookup!(standard, size, rating, answer);
  }
  const question = `${standard} leaves the number of bolts of ${size} open. Has this flange ${counts.join(' or ')}?`;
  ask(
    row,
    'boltCount',
    shared,
    'bolt-count-must-be-given',
    question,
    counts.map((value) => ({ value, label: `${value} bolts` })),
  );
  return undefined;
}

function fillOrCompare(
  row: Row,
  filled: RegisterField[],
  field: 'boltCount' | 'boltThread',
  standardValue: string | number,
  flange: string,
): void {
  const own = row.values[field];
  if (own === undefined) {
    if (mentioned(row, field)) return;
    Object.assign(row.values, { [field]: standardValue });
    filled.push(field);
    return;
  }
  if (comparableThread(String(own)) === comparableThread(String(standardValue))) return;
  const what = field === 'boltCount' ? `${own} bolts` : `bolts ${own}`;
  const theirs = field === 'boltCount' ? `${standardValue}` : String(standardValue);
  shown(
    row,
    field,
    'contradicts-standard',
    `The sheet has ${what}, ${flange} has ${theirs}. The sheet's value is kept: check it at the flange.`,
  );
}

function fillGasketCount(row: Row, filled: RegisterField[]): void {
  const { kind, gasketCount, gasketFamily } = row.values;
  if (kind === undefined) return;
  if (kind !== 'insert') {
    if (mentioned(row, 'gasketCount')) return;
    row.values.gasketCount = gasketFamily === 'none' ? 0 : 1;
    filled.push('gasketCount');
    return;
  }
  if (gasketCount === 1) {
    shown(
      row,
      'gasketCount',
      'insert-with-one-gasket',
      'An insert joint has two faces to seal, the sheet has one gasket. Check whether one gasket is meant.',
    );
  }
  if (mentioned(row, 'gasketCount')) return;
  const answer = Number(answerOf(row, 'gasketCount', 'insert'));
  if (answer === 1 || answer === 2) {
    row.values.gasketCount = answer;
    return;
  }
  ask(row, 'gasketCount', 'insert', 'gasket-count-must-be-given', 'How many gaskets has this insert joint?', [
    { value: 2, label: 'two, one on each side' },
    { value: 1, label: 'one' },
  ]);
}

function answerOf(row: Row, field: RegisterField, shared: string): string | number | undefined {
  return row.options.answers?.[`row.${row.rowNumber}.${field}`] ?? row.options.answers?.[`all.${field}.${shared}`];
}

function ask(
  row: Row,
  field: RegisterField,
  shared: string,
  code: string,
  question: string,
  choices: RowAsk['choices'],
): void {
  row.asks.push({
    ...at(row, field),
    code,
    key: `row.${row.rowNumber}.${field}`,
    sharedKey: `all.${field}.${shared}`,
    question,
    choices,
  });
}

function shown(row: Row, field: RegisterField, code: string, message: string): void {
  row.problems.push({ ...at(row, field), severity: 'shown', code, message });
}
