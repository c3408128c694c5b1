/** A table of a standard with its origin. The rows are text, so that they read like the printed table. */
export interface SourcedTable {
  readonly standard: string;
  readonly edition: string;
  readonly table: string;
  /** How we hold it: read, or from memory. Nothing has been read from the printed standard. */
  readonly held: string;
  readonly confidence: string;
  /** To be shown beside values of the table. */
  readonly statement: string;
  /** Columns separated by a bar; the first line names them, with units. */
  readonly text: string;
}

export type TableRow = Readonly<Record<string, string>>;

/** Splits a table into rows by column name. */
export function tableRows(table: SourcedTable): readonly TableRow[] {
  const lines = table.text.trim().split('\n');
  const columns = (lines[0] ?? '').split('|').map((cell) => cell.trim());
  return lines.slice(1).map((line) => {
    const cells = line.split('|');
    return Object.fromEntries(columns.map((column, i) => [column, (cells[i] ?? '').trim()]));
  });
}

/** A number of a row; undefined where the cell is blank (unknown), never zero in its place. */
export function numberIn(row: TableRow, column: string): number | undefined {
  const cell = row[column];
  if (cell === undefined) throw new Error(`The table has no column ${column}.`);
  if (cell === '') return undefined;
  const value = Number(cell);
  if (!Number.isFinite(value)) throw new Error(`Column ${column} holds "${cell}", which is not a number.`);
  return value;
}

/** A number that every row of the table has. */
export function requiredNumberIn(row: TableRow, column: string): number {
  const value = numberIn(row, column);
  if (value === undefined) throw new Error(`Column ${column} is blank in a row that needs it.`);
  return value;
}

/** Text of a row, blank when the cell is. */
export function textIn(row: TableRow, column: string): string {
  const cell = row[column];
  if (cell === undefined) throw new Error(`The table has no column ${column}.`);
  return cell;
}

/** Source line of a value taken from the table. */
export function citation(table: SourcedTable): string {
  return `${table.standard} (${table.edition}), ${table.table}; ${table.statement}`;
}
