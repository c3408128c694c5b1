import { REGISTER_FIELDS } from './fields.ts';
import { headerScore, headerText } from './guess-columns.ts';
import { type Cell, plainText } from './reading.ts';
import { unitOf } from './units.ts';

export interface HeaderRow {
  /** Index of the header in the rows given. */
  readonly index: number;
  /** Header texts; where the row below holds only units, with the unit behind them in brackets. */
  readonly headers: readonly string[];
  /** Index of the first row of data. */
  readonly firstDataIndex: number;
}

function headerWordsIn(row: readonly Cell[]): number {
  const fields = new Set<string>();
  for (const cell of row) {
    if (typeof cell !== 'string' || cell.length > 80) continue;
    const text = headerText(cell);
    const best = REGISTER_FIELDS.map((field) => [headerScore(text, field), field] as const).sort(
      (a, b) => b[0] - a[0],
    )[0];
    if (best !== undefined && best[0] > 0) fields.add(best[1]);
  }
  return fields.size;
}

function isUnitRow(row: readonly Cell[] | undefined): boolean {
  const texts = (row ?? []).map(plainText).filter((text) => text !== '');
  return (
    texts.length > 0 &&
    texts.every(
      (text) =>
        unitOf(text.replace(/^[([]|[)\]]$/g, '')) !== undefined || /^[([]?(-|no\.?|nps|dn|#)[)\]]?$/i.test(text),
    )
  );
}

/**
 * Finds the header of a sheet below its title lines: the row, among the first 30, whose cells name the most
 * fields. Undefined where no row names two fields: then somebody has to point at it.
 */
export function findHeaderRow(rows: readonly (readonly Cell[])[]): HeaderRow | undefined {
  let best = -1;
  let most = 1;
  rows.slice(0, 30).forEach((row, index) => {
    const count = headerWordsIn(row);
    if (count > most) {
      best = index;
      most = count;
    }
  });
  return best < 0 ? undefined : headerRowAt(rows, best);
}

/** The header at a row that somebody pointed at, with a row of units below it taken in. */
export function headerRowAt(rows: readonly (readonly Cell[])[], index: number): HeaderRow {
  const header = rows[index] ?? [];
  const units = rows[index + 1];
  const withUnits = isUnitRow(units);
  const headers = header.map((cell, column) => {
    const unit = withUnits ? plainText(units?.[column] ?? null).replace(/^[([]|[)\]]$/g, '') : '';
    return unit === '' ? plainText(cell) : `${plainText(cell)} (${unit})`;
  });
  return { index, headers, firstDataIndex: index + (withUnits ? 2 : 1) };
}
