import { describe, expect, test } from 'vitest';
import { flangeWords, threadSize } from './use-trade.ts';

describe('sizes as the trade says them', () => {
  test.each([
    ['1 1/8-8 UN', '1⅛″'],
    ['1-1/8-8 UN', '1⅛″'],
    ['5/8-11 UNC', '⅝″'],
    ['1-8 UNC', '1″'],
    ['2 1/2-8 UN', '2½″'],
    ['M20', 'M20'],
    ['M33x3.5', 'M33'],
    ['special', 'special'],
  ])('%s is told as %s', (thread, told) => {
    expect(threadSize(thread)).toBe(told);
  });

  test('flanges are told by size and rating', () => {
    expect(flangeWords('NPS12', '300')).toBe('NPS 12 · 300');
    expect(flangeWords('DN100', 'PN16')).toBe('DN 100 · PN 16');
    expect(flangeWords('', '')).toBe('');
  });
});
