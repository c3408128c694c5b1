import { describe, expect, test } from 'vitest';
import { EN } from './en/index.ts';
import { isolated } from './isolate.ts';
import { fill, offeredLanguages, paperLanguage, sheetTexts } from './sheet-texts.ts';

const LISTS_OF_CHOICE = /^(safety\.lines|testSheet\.cautions|recordForm\.conditions|boxes\.gap)/;

/** Every text by its place in the catalogue. */
function textsIn(value: unknown, path = ''): [path: string, text: string][] {
  if (typeof value === 'string') return [[path, value]];
  return Object.entries(value as object).flatMap(([key, each]) => textsIn(each, path ? `${path}.${key}` : key));
}

const namesIn = (text: string) => [...text.matchAll(/\{(\w+)\}/g)].map(([, name]) => name).sort();

describe.each(offeredLanguages)('the paper’s catalogue %s', (language) => {
  const { figures: _, ...words } = sheetTexts(language);
  const texts = new Map(textsIn(words));

  test('has every text that English has, lists of the same length, none empty', () => {
    expect([...texts.keys()].sort()).toEqual(
      textsIn(EN)
        .map(([path]) => path)
        .sort(),
    );
    for (const [path, text] of texts) expect(text, path).toMatch(/\S/);
    expect([...texts.keys()].some((path) => LISTS_OF_CHOICE.test(path))).toBe(true);
  });

  test('fills the same names as English, and keeps boxes to tick', () => {
    for (const [path, english] of textsIn(EN)) {
      const text = texts.get(path) ?? '';
      expect(namesIn(text), path).toEqual(namesIn(english));
      expect(text.split('☐').length, path).toBe(english.split('☐').length);
      expect(text, path).not.toMatch(/!/);
    }
  });
});

describe('texts of paper', () => {
  test('are English where paper has no words of a language', () => {
    expect(paperLanguage('tlh')).toBe('en');
    expect(paperLanguage(undefined)).toBe('en');
    expect(paperLanguage('en-GB')).toBe('en');
  });

  test('with a hole are refused before they are printed', () => {
    expect(() => fill('Pass {number}', {})).toThrow('needs {number}');
  });

  test('from right to left keep tags, numbers and units as entered; from left to right they are not touched', () => {
    const data = { torque: '259 N·m (191 ft·lbf)', qr: '<svg/>', rows: ['عند U41-P-1107-F3'] };
    expect(isolated(data, 'en', ['qr'])).toBe(data);
    const marked = isolated(data, 'ar', ['qr']);
    expect(marked.qr).toBe('<svg/>');
    expect(marked.torque).toBe('\u2068\u2066259 N·m (191 ft·lbf)\u2069\u2069');
    expect(marked.rows[0]).toBe('\u2068عند \u2066U41-P-1107-F3\u2069\u2069');
  });
});
