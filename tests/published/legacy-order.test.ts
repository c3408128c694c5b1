import { tighteningSequence } from '@seatwell/calc';
import { describe, expect, it } from 'vitest';

// ASME PCC-1-2013 and PCC-1-2019, Table 4, legacy cross pattern; from memory of the document.
// 48 bolts in groups of four: common practice (four neighbouring bolts as one place of the 12-bolt order).
const PRINTED: readonly [count: number, order: string][] = [
  [4, '1 3 2 4'],
  [8, '1 5 3 7 2 6 4 8'],
  [12, '1 7 4 10 2 8 5 11 3 9 6 12'],
  [16, '1 9 5 13 3 11 7 15 2 10 6 14 4 12 8 16'],
  [20, '1 11 6 16 3 13 8 18 5 15 10 20 2 12 7 17 4 14 9 19'],
  [24, '1 13 7 19 4 16 10 22 2 14 8 20 5 17 11 23 3 15 9 21 6 18 12 24'],
];

describe('legacy cross pattern, PCC-1-2013 and 2019 Table 4 (from memory)', () => {
  it.each(PRINTED)('%i bolts', (boltCount, order) => {
    const sequence = tighteningSequence({ boltCount, pattern: 'legacy', numbering: 'clockwise' });
    expect(sequence.order.flat().join(' ')).toBe(order);
  });

  it('36 bolts: the 12-bolt order on groups of three', () => {
    const { order } = tighteningSequence({
      boltCount: 36,
      group: 3,
      pattern: 'legacy',
      numbering: 'clockwise',
    });
    expect(order.map((step) => step[0]).join(' ')).toBe('1 19 10 28 4 22 13 31 7 25 16 34');
    expect(order[1]).toEqual([19, 20, 21]);
  });

  it('48 bolts: the 12-bolt order on groups of four (common practice)', () => {
    const { order } = tighteningSequence({
      boltCount: 48,
      group: 4,
      pattern: 'legacy',
      numbering: 'clockwise',
    });
    const groups = order.map((step) => ((step[0] ?? 0) - 1) / 4 + 1);
    expect(groups.join(' ')).toBe('1 7 4 10 2 8 5 11 3 9 6 12');
    expect(order[0]).toEqual([1, 2, 3, 4]);
  });
});
