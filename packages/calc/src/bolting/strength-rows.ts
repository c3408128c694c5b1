import { numberIn, tableRows, textIn } from '../tables/sourced-table.ts';
import { BOLTING_STRENGTH } from './tables/strength.ts';

export interface StrengthRow {
  readonly specification: string;
  readonly grade: string;
  readonly over_mm: number;
  readonly upTo_mm: number;
  readonly over_in: number;
  readonly upTo_in: number;
  readonly tensile_MPa: number;
  readonly yield_MPa: number;
  readonly proof_MPa: number | undefined;
  readonly note: string;
}

/** Steps of diameter by grade, small to large. */
export const strengthRows: ReadonlyMap<string, readonly StrengthRow[]> = (() => {
  const byGrade = new Map<string, StrengthRow[]>();
  for (const cells of tableRows(BOLTING_STRENGTH)) {
    const grade = textIn(cells, 'grade');
    // A blank bound is open; where only one unit is printed the other follows from it.
    const upToIn = numberIn(cells, 'upTo_in');
    const upTo_mm = numberIn(cells, 'upTo_mm') ?? (upToIn === undefined ? Infinity : upToIn * 25.4);
    const over_mm = numberIn(cells, 'over_mm') ?? 0;
    const row: StrengthRow = {
      specification: textIn(cells, 'specification'),
      grade,
      over_mm,
      upTo_mm,
      over_in: numberIn(cells, 'over_in') ?? over_mm / 25.4,
      upTo_in: upToIn ?? upTo_mm / 25.4,
      tensile_MPa: numberIn(cells, 'tensile_MPa') ?? Number.NaN,
      yield_MPa: numberIn(cells, 'yield_MPa') ?? Number.NaN,
      proof_MPa: numberIn(cells, 'proof_MPa'),
      note: textIn(cells, 'note'),
    };
    const rows = byGrade.get(grade);
    if (rows === undefined) byGrade.set(grade, [row]);
    else rows.push(row);
  }
  return byGrade;
})();
