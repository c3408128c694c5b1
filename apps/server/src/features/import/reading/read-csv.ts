import { type Cell, withoutControlCharacters } from '@seatwell/workflow';
import { CsvError, parse } from 'csv-parse/sync';
import { decodeText } from './decode-text.ts';
import {
  compactRows,
  type ReadingLimits,
  ReadingRefusal,
  type SheetList,
  type SheetReading,
  type TextFormat,
} from './reading-result.ts';

const delimiters = [',', ';', '\t', '|'] as const;

/** Fields per line outside quotes, for the first lines of a text. */
function fieldCounts(text: string, delimiter: string): number[] {
  const counts: number[] = [];
  let count = 1;
  let inQuotes = false;
  for (const sign of text.slice(0, 50_000)) {
    if (sign === '"') inQuotes = !inQuotes;
    else if (!inQuotes && sign === delimiter) count++;
    else if (!inQuotes && sign === '\n') {
      counts.push(count);
      count = 1;
      if (counts.length === 40) return counts;
    }
  }
  counts.push(count);
  return counts;
}

/** The delimiter that splits most lines into the same number of fields, more fields going first. */
export function delimiterOf(text: string): string {
  const named = /^"?sep=(.)"?\r?\n/i.exec(text)?.[1];
  if (named !== undefined) return named;
  let best: string = ',';
  let bestScore = 0;
  for (const delimiter of delimiters) {
    const byCount = new Map<number, number>();
    for (const count of fieldCounts(text, delimiter)) if (count > 1) byCount.set(count, (byCount.get(count) ?? 0) + 1);
    const score = Math.max(0, ...[...byCount].map(([fields, lines]) => lines * Math.log2(fields)));
    if (score > bestScore) {
      best = delimiter;
      bestScore = score;
    }
  }
  return best;
}

function decoded(bytes: Uint8Array): { readonly text: string; readonly format: TextFormat } {
  const { text, encoding } = decodeText(bytes);
  return { text, format: { encoding, delimiter: delimiterOf(text) } };
}

/** A text file has one sheet, named by the file. */
export function listCsv(name: string, bytes: Uint8Array): SheetList {
  return { ok: true, format: 'csv', sheets: [{ name, hidden: false }], text: decoded(bytes).format };
}

/** Reads a CSV file; rows keep their number as a spreadsheet program would show it. */
export function readCsv(name: string, bytes: Uint8Array, limits: ReadingLimits): SheetReading {
  const { text, format } = decoded(bytes);
  // Spreadsheet programs do not show the line that names the delimiter.
  const body = text.replace(/^"?sep=."?\r?\n/i, '');
  const rows = compactRows(records(body, format.delimiter, limits), limits);
  const width = rows.reduce((widest, row) => Math.max(widest, row.cells.length), 0);
  return { ok: true, sheet: name, rows, width, notes: [], text: format };
}

function records(text: string, delimiter: string, limits: ReadingLimits): Cell[][] {
  try {
    const parsed: string[][] = parse(text, {
      delimiter,
      relax_column_count: true,
      relax_quotes: true,
      skip_empty_lines: false,
      max_record_size: 1_000_000,
      to: limits.rows + 1000,
    });
    return parsed.map((record) => record.map((field) => withoutControlCharacters(field).trim() || null));
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    const line = typeof error['lines'] === 'number' ? ` near line ${error['lines']}` : '';
    throw new ReadingRefusal(
      'damaged',
      `The CSV file cannot be read${line}: a quote is opened and not closed, or a field has more than 1,000,000 characters. Correct that line, or save the register as XLSX.`,
    );
  }
}
