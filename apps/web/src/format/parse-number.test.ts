import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parseNumber } from './parse-number.ts';

const value = (entered: string, mark: '.' | ',' = '.') => {
  const parsed = parseNumber(entered, mark);
  return parsed.kind === 'number' ? parsed.value : parsed.kind;
};

describe('a number as typed on site', () => {
  test.each([
    ['475', 475],
    ['3,1', 3.1],
    ['3.1', 3.1],
    [' 0,17 ', 0.17],
    ['-12,5', -12.5],
    ['−40', -40],
    ['1 150', 1150],
    ["1'150", 1150],
    ['1\u202f150,5', 1150.5],
    ['1,150.5', 1150.5],
    ['1.150,5', 1150.5],
    ['1,234,567', 1234567],
    ['0,150', 0.15],
    ['1.150', 1.15],
    ['1 1/8', 1.125],
    ['1-1/8', 1.125],
    ['1⅛', 1.125],
    ['7/8', 0.875],
    ['.5', 0.5],
  ])('reads %s as %d', (entered, expected) => {
    expect(value(entered)).toBe(expected);
  });

  test.each(['abc', '1,15,0', '1.2.3', '12 4', '--3', '1/0', '4 N', '1,150,5'])('does not take %s', (entered) => {
    expect(value(entered)).toBe('not-a-number');
  });

  test('asks back where a comma may separate thousands', () => {
    expect(parseNumber('1,150')).toEqual({ kind: 'ambiguous', readings: [1150, 1.15] });
    expect(parseNumber('1.150', ',')).toEqual({ kind: 'ambiguous', readings: [1150, 1.15] });
  });

  test('does not ask where the mark is the decimal mark of the language', () => {
    expect(value('1,150', ',')).toBe(1.15);
    expect(value('1.150', '.')).toBe(1.15);
  });

  test('knows an empty field', () => {
    expect(value('  ')).toBe('empty');
  });

  test('reads back every number in either notation, or asks', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -9_999_999, max: 9_999_999 }),
        fc.integer({ min: 0, max: 3 }),
        (digits, decimals) => {
          const wanted = Number((digits / 10 ** decimals).toFixed(decimals));
          for (const mark of ['.', ','] as const) {
            const parsed = parseNumber(wanted.toFixed(decimals).replace('.', mark), mark);
            expect(parsed).toEqual({ kind: 'number', value: wanted });
          }
        },
      ),
    );
  });
});
