import type { JointRow, RegisterAnswer } from '@seatwell/contract';
import { describe, expect, test } from 'vitest';
import { blockRows, blocksOf, rowCountOf, rowsOf } from './register-blocks.ts';

const block = (count: number, next: string | null): RegisterAnswer => ({
  rows: Array.from({ length: count }, (_, index) => ({ jointId: String(index) }) as JointRow),
  next,
  total: null,
  registerTotal: null,
  withoutTarget: null,
  foundCount: null,
});

describe('the blocks of a register', () => {
  test('are those that hold the rows in sight', () => {
    expect(blocksOf(0, 40)).toEqual([0]);
    expect(blocksOf(blockRows - 1, blockRows)).toEqual([0, 1]);
    expect(blocksOf(99_990, 99_999)).toEqual([Math.floor(99_990 / blockRows)]);
  });

  test('offer every row that was counted, also where nothing is loaded yet', () => {
    expect(rowCountOf({ count: 100_000, exact: true }, new Map([[0, block(blockRows, 'more')]]))).toBe(100_000);
  });

  test('reach beyond what is counted only until the end was seen', () => {
    const begun = new Map([[0, block(blockRows, 'more')]]);
    expect(rowCountOf({ count: 10_000, exact: false }, begun)).toBeGreaterThan(10_000);
    expect(rowCountOf({ count: 10_000, exact: false }, new Map([...begun, [80, block(7, null)]]))).toBe(
      80 * blockRows + 7,
    );
  });

  test('leave open what lies between', () => {
    const count = 3 * blockRows;
    const rows = rowsOf(
      new Map([
        [0, block(blockRows, 'more')],
        [2, block(blockRows, null)],
      ]),
      count,
    );
    expect(rows).toHaveLength(count);
    expect(rows[blockRows]).toBeUndefined();
    expect(rows[2 * blockRows]?.jointId).toBe('0');
  });
});
