import { describe, expect, test } from 'vitest';
import { completeSizes, LABEL_SHEETS, type LabelSizes, noSizes } from './label-sizes.ts';

const sizeOf = ({ columns, rows, marginX_mm, marginY_mm, gapX_mm, gapY_mm }: LabelSizes) => [
  (210 - 2 * marginX_mm - (columns - 1) * gapX_mm) / columns,
  (297 - 2 * marginY_mm - (rows - 1) * gapY_mm) / rows,
];

describe('label sheets', () => {
  test('have the sizes that their names say', () => {
    const [width, height] = sizeOf(LABEL_SHEETS['2x7']);
    expect(width).toBeCloseTo(99.1, 1);
    expect(height).toBeCloseTo(38.1, 1);
    expect(sizeOf(LABEL_SHEETS['3x8'])).toEqual([70, 37]);
  });

  test('are complete once every size is typed in, zero being a size', () => {
    expect(completeSizes(noSizes)).toBeUndefined();
    const typed = { ...noSizes, columns: 2, rows: 4, marginX_mm: 0, marginY_mm: 0 };
    expect(completeSizes(typed)).toEqual(typed);
  });
});
