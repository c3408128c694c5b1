import { describe, expect, test } from 'vitest';
import { CARDS, tagGeometry, tagSize } from './tag-geometry.ts';

const labels = { columns: 3, rows: 8, marginX_mm: 0, marginY_mm: 0.5, gapX_mm: 0, gapY_mm: 0, first: 1 };

describe('tags on a sheet of A4', () => {
  test('have the size that counts, margins and gaps leave', () => {
    expect(tagSize(labels)).toEqual({ width_mm: 70, height_mm: 37, stubs: false });
    expect(tagSize(CARDS)).toEqual({ width_mm: 93, height_mm: 136, stubs: true });
  });

  test('too small to be scanned are refused with their size and the remedy', () => {
    expect(() => tagSize({ ...labels, columns: 4, marginX_mm: 20 })).toThrow(
      /42\.5 × 37\.0 mm.*at least 45 × 20 mm\. Choose fewer columns/,
    );
  });

  test('begin at a label that the sheet has', () => {
    expect(tagSize({ ...labels, first: 24 })).toMatchObject({ width_mm: 70 });
    expect(() => tagSize({ ...labels, first: 25 })).toThrow(/24 labels.*given as 25/);
  });

  test('without gaps and a first label named lie side by side from the first', () => {
    const { gapX_mm: _x, gapY_mm: _y, first: _first, ...sizes } = labels;
    expect(tagGeometry.parse(sizes)).toEqual(labels);
    expect(tagGeometry.safeParse({ ...sizes, columns: 0 }).success).toBe(false);
  });
});
