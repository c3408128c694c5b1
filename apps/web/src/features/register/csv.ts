// A spreadsheet takes a cell that begins so for a formula and would carry it out.
const formula = /^[=+\-@\t\r]/;

/** One cell as a spreadsheet may open it: never a formula, quoted where it holds a mark of the format. */
function cell(value: string | number | null): string {
  if (value === null) return '';
  if (typeof value === 'number') return String(value);
  const harmless = formula.test(value) ? `'${value}` : value;
  return /[",\r\n]/.test(harmless) ? `"${harmless.replaceAll('"', '""')}"` : harmless;
}

/** Rows as a CSV text (RFC 4180), with the mark that makes spreadsheets read it as UTF-8. */
export function csvOf(rows: readonly (readonly (string | number | null)[])[]): string {
  return `\ufeff${rows.map((row) => `${row.map(cell).join(',')}\r\n`).join('')}`;
}
