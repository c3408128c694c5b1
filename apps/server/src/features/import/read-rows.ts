import type { ImportChoices, ImportProblem, ImportQuestion } from '@seatwell/contract';
import { CRITICALITIES } from '@seatwell/contract';
import {
  type ColumnMapping,
  type ColumnReading,
  columnLetter,
  comparableTag,
  duplicateTags,
  isEmptyRow,
  questionsOf,
  type RegisterOptions,
  type RowAsk,
  type RowReading,
  registerReader,
  type SheetRow,
} from '@seatwell/workflow';
import { lookupFlange } from './reading/flange-lookup.ts';
import { inSlices } from './slices.ts';

export interface ReadRow {
  readonly reading: RowReading;
  readonly problems: readonly ImportProblem[];
}

export interface ReadRows {
  readonly rows: readonly ReadRow[];
  readonly columns: readonly ColumnReading[];
  readonly questions: readonly ImportQuestion[];
}

const MISSING_CRITICALITY = 'all.criticality.missing';

function registerOptions({ options }: ImportChoices): RegisterOptions {
  return {
    ...(options.dateOrder ? { dateOrder: options.dateOrder } : {}),
    ...(options.decimal ? { decimal: options.decimal } : {}),
    ...(options.units ? { units: options.units } : {}),
    ...(options.defaultStandard ? { defaultStandard: options.defaultStandard } : {}),
    ...(options.answers ? { answers: options.answers } : {}),
    criticalityLevels: CRITICALITIES,
  };
}

/**
 * A new joint needs a criticality, since it decides how it is checked: where the sheet says none, it is the one
 * chosen for all of them, or a question.
 */
function withCriticality(
  reading: RowReading,
  choices: ImportChoices,
  mapping: ColumnMapping,
  isKnown: boolean,
): RowReading {
  const mentioned =
    reading.values.criticality !== undefined ||
    reading.asks.some((ask) => ask.field === 'criticality') ||
    reading.problems.some((problem) => problem.field === 'criticality' && problem.severity === 'error');
  if (mentioned || isKnown) return reading;
  const chosen = choices.options.answers?.[MISSING_CRITICALITY] ?? choices.options.defaultCriticality;
  if (chosen !== undefined && (CRITICALITIES as readonly (string | number)[]).includes(chosen)) {
    return {
      ...reading,
      values: { ...reading.values, criticality: String(chosen) },
      filled: [...reading.filled, 'criticality'],
    };
  }
  const column = mapping.criticality;
  const ask: RowAsk = {
    field: 'criticality',
    column: column === undefined ? '' : columnLetter(column),
    value: '',
    code: 'criticality-must-be-given',
    key: `row.${reading.rowNumber}.criticality`,
    sharedKey: MISSING_CRITICALITY,
    question: 'Which criticality have joints for which the sheet says none? It decides how each is checked.',
    choices: CRITICALITIES.map((value) => ({ value, label: value })),
  };
  return { ...reading, asks: [...reading.asks, ask] };
}

/** Reads all rows below the header in slices, so that other requests get their turn. */
export async function readRows(
  sheetRows: readonly SheetRow[],
  headers: readonly string[],
  mapping: ColumnMapping,
  choices: ImportChoices,
  isKnown: (tag: string) => boolean,
  progress: (rows: number) => Promise<void>,
): Promise<ReadRows> {
  const reader = registerReader({
    rows: sheetRows,
    mapping,
    headers,
    options: registerOptions(choices),
    lookupFlange,
  });
  const readings: RowReading[] = [];
  let done = 0;
  for await (const slice of inSlices(sheetRows)) {
    for (const row of slice) {
      if (isEmptyRow(row)) continue;
      const reading = reader.readRow(row);
      const tag = reading.values.tag;
      readings.push(withCriticality(reading, choices, mapping, tag !== undefined && isKnown(tag)));
    }
    done += slice.length;
    await progress(done);
  }
  const twice = new Map(
    duplicateTags(readings).map(({ tag, rowNumbers }) => [comparableTag(tag), { tag, rowNumbers }] as const),
  );
  const tagColumn = mapping.tag === undefined ? '' : columnLetter(mapping.tag);
  const rows = readings.map((reading): ReadRow => {
    const { rowNumber, values } = reading;
    const problems: ImportProblem[] = reading.problems.map((problem) => ({ rowNumber, ...problem }));
    for (const { field, column, value, code, question } of reading.asks) {
      problems.push({ rowNumber, field, column, value, severity: 'error', code, message: question });
    }
    const others = values.tag === undefined ? undefined : twice.get(comparableTag(values.tag));
    if (others) {
      problems.push({
        rowNumber,
        field: 'tag',
        column: tagColumn,
        value: values.tag ?? '',
        severity: 'error',
        code: 'tag-twice',
        message: `${values.tag} stands in rows ${others.rowNumbers.slice(0, 10).join(', ')}. A tag is one joint: correct it, or delete the rows that repeat it.`,
      });
    }
    return { reading, problems };
  });
  return {
    rows,
    columns: reader.columns,
    questions: questionsOf(readings).map(({ rowNumbers, choices: offered, ...question }) => ({
      ...question,
      choices: [...offered],
      rows: rowNumbers.length,
      firstRows: rowNumbers.slice(0, 5),
    })),
  };
}
