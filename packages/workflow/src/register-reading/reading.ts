/** A cell as a sheet gives it: text, number, yes/no, a date cell (UTC midnight) or nothing. */
export type Cell = string | number | boolean | Date | null;

/** One of the readings that a question offers. `value` is what an answer has to carry. */
export interface Choice {
  readonly value: string | number;
  readonly label: string;
}

/** Two or more plausible readings: somebody has to say which one is meant. */
export interface Question {
  readonly code: string;
  readonly question: string;
  readonly choices: readonly Choice[];
}

/** What reading a cell gives: a value, a refusal that names value and remedy, or a question. */
export type Reading<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly code: string; readonly message: string }
  | { readonly ok?: undefined; readonly ask: Question };

/** A value that could be read in one way only. */
export function read<T>(value: T): Reading<T> {
  return { ok: true, value };
}

/** A value that could not be read; the message names the value and the remedy. */
export function refuse<T>(code: string, message: string): Reading<T> {
  return { ok: false, code, message };
}

/** A value with more than one plausible reading. */
export function ask<T>(code: string, question: string, choices: readonly Choice[]): Reading<T> {
  return { ask: { code, question, choices } };
}

const fractions: Readonly<Record<string, string>> = {
  '¼': '1/4',
  '½': '1/2',
  '¾': '3/4',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
  '⅓': '1/3',
  '⅔': '2/3',
};

// Control characters, zero-width marks and the byte-order mark reach cells by copy and paste.
// biome-ignore lint/suspicious/noControlCharactersInRegex: these are the characters to remove
const invisible = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f-\u009f\u200b-\u200f\u2060\ufeff]/g;

/** Text without control and invisible characters; tabs and line ends stay. */
export function withoutControlCharacters(text: string): string {
  return text.replace(invisible, '');
}

/** The text of a cell without control and invisible characters, white space collapsed. */
export function plainText(cell: Cell): string {
  if (cell === null) return '';
  if (cell instanceof Date) return Number.isNaN(cell.getTime()) ? '' : cell.toISOString().slice(0, 10);
  return String(cell).replace(invisible, '').replace(/\s+/g, ' ').trim();
}

/**
 * Text with the signs of the trade brought to one form: `½` as ` 1/2`, every inch mark as `"`,
 * every dash as `-`, full-width letters as plain ones.
 */
export function plainSigns(cell: Cell): string {
  return plainText(cell)
    .replace(/[¼½¾⅛⅜⅝⅞⅓⅔]/g, (sign) => ` ${fractions[sign]}`)
    .replace(/''|[″”“„‟〃]/g, '"')
    .normalize('NFKC')
    .replace(/\u2044/g, '/')
    .replace(/[‐‑‒–—―−]/g, '-')
    .replace(/\s+/g, ' ')
    .trim();
}

/** Lower case words with every sign between them as one space: what word tables are matched against. */
export function plainWords(cell: Cell): string {
  return plainText(cell)
    .normalize('NFKD')
    .replace(/[\u0300-\u036f]/g, '')
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, ' ')
    .trim();
}

/** A cell that the sheet turned into a date where the trade writes a fraction: `1/2`, `5/8`. */
export function sheetMadeADate<T>(what: string, cell: Date): Reading<T> {
  const written = Number.isNaN(cell.getTime()) ? 'no valid date' : cell.toISOString().slice(0, 10);
  return refuse(
    'sheet-made-a-date',
    `The sheet holds the date ${written} where a ${what} is expected; sheets turn fractions such as 1/2 or 5/8 into dates. Format the column as text and type the ${what} again.`,
  );
}

/** A value shortened so that a message stays readable. */
export function quoted(cell: Cell): string {
  const text = plainText(cell);
  return `"${text.length > 60 ? `${text.slice(0, 57)}...` : text}"`;
}
