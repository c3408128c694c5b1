import { describe, expect, test } from 'vitest';
import { csvOf } from './csv.ts';

const withoutMark = (text: string) => text.replace(/^\ufeff/, '');

describe('a list for a spreadsheet', () => {
  test.each(['=HYPERLINK("x")', '+1', '-1', '@SUM(A1)', '\tx', '\rx'])('%j is no formula', (dangerous) => {
    expect(withoutMark(csvOf([[dangerous]]))).toMatch(/^"?'/);
  });

  test('quotes commas, quotation marks and lines, and keeps numbers as they are', () => {
    expect(withoutMark(csvOf([['1⅛" stud, cut', 'two\nlines', -12.5, null, 'plain']]))).toBe(
      '"1⅛"" stud, cut","two\nlines",-12.5,,plain\r\n',
    );
  });

  test('says that it is UTF-8', () => {
    expect(csvOf([['Kühler']])).toBe('\ufeffKühler\r\n');
  });
});
