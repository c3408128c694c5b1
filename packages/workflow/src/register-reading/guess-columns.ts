import { readCell } from './cell-readers.ts';
import { type ColumnMapping, REGISTER_FIELDS, type RegisterField } from './fields.ts';
import { headerWords } from './header-words.ts';
import { type Cell, plainSigns, plainText } from './reading.ts';

export interface ColumnGuess {
  readonly column: number;
  readonly header: string;
  readonly field: RegisterField | 'ignored';
  /** 0 to 1: 1 where the header names the field and the samples agree. */
  readonly confidence: number;
}

export interface GuessedColumns {
  readonly mapping: ColumnMapping;
  readonly columns: readonly ColumnGuess[];
}

/** Fields whose cells have a form of their own, so that samples speak for or against them. */
const telling: ReadonlySet<RegisterField> = new Set([
  'kind',
  'standard',
  'size',
  'rating',
  'facing',
  'boltCount',
  'boltThread',
  'boltLength',
  'gasketFamily',
  'gasketCount',
  'insertThickness',
  'designPressure',
  'designTemperature',
  'testPressure',
  'criticality',
  'workScope',
  'plannedDate',
]);
/** Fields that samples alone can give away, with the mark that their cells carry. */
const givenAway: Readonly<Partial<Record<RegisterField, RegExp>>> = {
  size: /^(DN\s?\d|NPS|\d[\d /.-]*")/i,
  rating: /^(PN\s?\d|CL|CLASS|#\d|\d+\s?(#|LBS?))/i,
  boltThread: /^(M\s?\d|\d[\d /-]*-\d+\s?UN)/i,
  facing: /^(RF|FF|RTJ)$/i,
};

/** A header in lower case, without signs, brackets and what stands in them. */
export function headerText(header: Cell): string {
  const text = plainSigns(header).slice(0, 200).toLowerCase();
  const bare = text.replace(/[([{][^)\]}]*[)\]}]/g, ' ');
  return (/[a-z]/.test(bare) ? bare : text)
    .replace(/ø/g, 'o')
    .replace(/#/g, ' no ')
    .replace(/[^a-z0-9]+/g, ' ')
    .replace(/\b(bar ?[ag]?|psi[ag]?|k?mpa|kpa[ag]?|mm|inch(es)?|deg|celsius)\b/g, ' ')
    .replace(/\s+/g, ' ')
    .trim();
}

/** How well a header names a field, 0 to 1. */
export function headerScore(header: string, field: RegisterField): number {
  if (header === '') return 0;
  const { exact, likely } = headerWords[field];
  if (exact.test(header)) return 0.9;
  return likely.test(header) ? 0.55 : 0;
}

function sampleShare(field: RegisterField, samples: readonly Cell[]): number | undefined {
  const filled = samples.filter((cell) => plainText(cell) !== '');
  if (filled.length === 0 || !telling.has(field)) return undefined;
  return filled.filter((cell) => readCell(field, cell, {}).ok !== false).length / filled.length;
}

function score(field: RegisterField, header: string, samples: readonly Cell[]): number {
  const byHeader = headerScore(header, field);
  const share = sampleShare(field, samples);
  if (byHeader === 0) {
    const mark = givenAway[field];
    const filled = samples.filter((cell) => plainText(cell) !== '');
    if (mark === undefined || filled.length < 3) return 0;
    return filled.every((cell) => mark.test(plainSigns(cell))) ? 0.4 : 0;
  }
  if (share === undefined) return byHeader;
  return share >= 0.5 ? Math.min(1, byHeader + 0.1 * share) : byHeader * (0.4 + share * 0.6);
}

/**
 * Guesses which column holds which field: by the header's words first, by the sample cells where the words leave
 * it open. Each field gets one column at most; a column that nothing fits is `ignored`.
 *
 * @param headers the header row
 * @param sampleRows some rows below it
 */
export function guessColumns(headers: readonly Cell[], sampleRows: readonly (readonly Cell[])[]): GuessedColumns {
  const width = Math.max(headers.length, ...sampleRows.map((row) => row.length));
  const candidates: { field: RegisterField; column: number; score: number }[] = [];
  for (let column = 0; column < width; column++) {
    const header = headerText(headers[column] ?? null);
    const samples = sampleRows.slice(0, 50).map((row) => row[column] ?? null);
    for (const field of REGISTER_FIELDS) {
      const value = score(field, header, samples);
      if (value >= 0.3) candidates.push({ field, column, score: value });
    }
  }
  candidates.sort((first, second) => second.score - first.score || first.column - second.column);
  const mapping: Partial<Record<RegisterField, number>> = {};
  const byColumn = new Map<number, { field: RegisterField; score: number }>();
  for (const candidate of candidates) {
    if (mapping[candidate.field] !== undefined || byColumn.has(candidate.column)) continue;
    mapping[candidate.field] = candidate.column;
    byColumn.set(candidate.column, candidate);
  }
  const columns = Array.from({ length: width }, (_, column): ColumnGuess => {
    const guess = byColumn.get(column);
    const header = plainText(headers[column] ?? null);
    return {
      column,
      header,
      field: guess?.field ?? 'ignored',
      confidence: Math.round((guess?.score ?? 0) * 100) / 100,
    };
  });
  return { mapping, columns };
}
