import { describe, expect, test } from 'vitest';
import * as english from './en/index.ts';
import { createTranslator } from './translate.ts';

describe('the texts', () => {
  const translator = createTranslator();

  test('are found by feature and key, with their values', () => {
    expect(translator.t('least', { ns: 'ui', limit: '95' })).toBe('At least 95');
  });

  test('count', () => {
    expect(translator.t('matches', { ns: 'ui', count: 1 })).toBe('1 match');
    expect(translator.t('matches', { ns: 'ui', count: 4 })).toBe('4 matches');
  });

  test('leave values as they are: the screen escapes, not the text', () => {
    expect(translator.t('no-match', { ns: 'ui', query: '<12" & up>' })).toBe('No match for “<12" & up>”');
  });

  test('fall back to English where a language lacks one', () => {
    expect(createTranslator('ar').t('close', { ns: 'ui' })).toBe('Close');
  });

  test('stop a screen under development that asks for one that is not there', () => {
    expect(() => translator.t('not-there', { ns: 'ui' })).toThrow(/No text "not-there" in the catalogue "ui"/);
  });

  test.each(Object.entries(english))('%s: no exclamation marks, no empty texts, keys in order', (_, catalogue) => {
    const texts: Record<string, unknown> = { ...catalogue };
    for (const [key, text] of Object.entries(texts)) {
      expect(text, key).toMatch(/\S/);
      expect(text, key).not.toMatch(/!/);
    }
    expect(Object.keys(texts)).toEqual(Object.keys(texts).sort());
  });
});
