import { readdirSync, readFileSync } from 'node:fs';
import { LANGUAGES, type Language } from '@seatwell/contract';
import { RULES } from '@seatwell/workflow';
import { describe, expect, test } from 'vitest';

type Catalogue = Readonly<Record<string, string>>;

const read = (language: Language, file: string): Catalogue =>
  JSON.parse(readFileSync(new URL(`./${language}/${file}`, import.meta.url), 'utf8'));
const catalogues = (language: Language): string[] =>
  readdirSync(new URL(`./${language}/`, import.meta.url)).filter((file) => file.endsWith('.json'));

const FORM = /_(zero|one|two|few|many|other)$/;
const english = new Map(catalogues('en').map((file) => [file, read('en', file)]));
const placeholders = (text: string): string[] =>
  [...text.matchAll(/\{\{(\w+)\}\}/g)].map(([, name]) => name ?? '').sort();

/** The keys that a language needs for an English catalogue: its own plural forms, and `_zero` where English has it. */
function keysNeeded(language: Language, catalogue: Catalogue): string[] {
  const forms = new Intl.PluralRules(language).resolvedOptions().pluralCategories;
  return Object.keys(catalogue).flatMap((key) => {
    if (!FORM.test(key)) return [key];
    const base = key.replace(FORM, '');
    if (key.endsWith('_other')) return forms.map((form) => `${base}_${form}`);
    return key.endsWith('_zero') && !forms.includes('zero') ? [key] : [];
  });
}

/** The English text that a key answers: of a plural form that English lacks, the form `other`. */
const englishOf = (catalogue: Catalogue, key: string): string =>
  catalogue[key] ?? catalogue[key.replace(FORM, '_other')] ?? '';

const SCRIPTS: Readonly<Partial<Record<Language, RegExp>>> = {
  hi: /\p{Script=Devanagari}/u,
  ar: /\p{Script=Arabic}/u,
};

const others = LANGUAGES.filter((language) => language !== 'en');

describe.each(others)('the texts in %s', (language) => {
  test('are one catalogue for each of English, and one for the rules', () => {
    expect(catalogues(language).sort()).toEqual([...english.keys(), 'rules.json'].sort());
  });

  test.each([...english])('%s has every key and no other, in order', (file, catalogue) => {
    const keys = Object.keys(read(language, file));
    expect(keys).toEqual([...new Set(keysNeeded(language, catalogue))].sort());
  });

  test.each([...english])(
    '%s keeps every value of the text, has none empty and no exclamation marks',
    (file, catalogue) => {
      for (const [key, text] of Object.entries(read(language, file))) {
        expect(text, key).toMatch(/\S/);
        expect(text, key).not.toMatch(/!/);
        const needed = placeholders(englishOf(catalogue, key));
        // "one joint" needs no figure.
        const told =
          FORM.test(key) && !/_(other|many|few)$/.test(key) ? needed.filter((name) => name !== 'count') : needed;
        expect([...new Set([...placeholders(text), ...told])].sort(), key).toEqual(
          [...new Set([...placeholders(text)])].sort(),
        );
        for (const name of placeholders(text)) expect(needed, `${key}: {{${name}}}`).toContain(name);
      }
    },
  );

  test('the rules have their sentence, reason and remedy', () => {
    const wanted = RULES.flatMap(({ code }) => ['sentence', 'why', 'remedy'].map((part) => `${code}.${part}`));
    expect(Object.keys(read(language, 'rules.json'))).toEqual([...new Set(wanted)].sort());
  });

  test('are not English left standing', () => {
    const same: string[] = [];
    const script = SCRIPTS[language];
    let all = 0;
    for (const [file, catalogue] of english) {
      for (const [key, text] of Object.entries(read(language, file))) {
        if (!/[a-z]{4}/.test(englishOf(catalogue, key).replaceAll(/\{\{\w+\}\}/g, ''))) continue;
        all += 1;
        if (script ? !script.test(text) : text === englishOf(catalogue, key)) same.push(`${file}: ${key}`);
      }
    }
    // Some words are the same in both: "gasket batch" is not, "{{count}} bar" and "total" are.
    expect(same.length / all, same.slice(0, 40).join('\n')).toBeLessThan(0.04);
  });
});
