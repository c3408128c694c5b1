import { CalcRefusal, GASKET_FAMILY_CODES, retighteningRule, tighteningSequence } from '@seatwell/calc';
import { LANGUAGES, loadSentences, type Sentences, sayIn } from '@seatwell/contract';
import { describe, expect, test } from 'vitest';
import { sentencesIn } from './support/sentences-in-source.ts';

const PLACE = /\{\{\w*\}\}/g;
const plain = (sentence: string) =>
  sentence.replaceAll(PLACE, '{{}}').replaceAll(/(\{\{\}\}[ ]?)+/g, (run) => (run.endsWith(' ') ? '{{}} ' : '{{}}'));
// The action stands on the button beside the reason, in the language; its name in the record is English.
const placesIn = (sentence: string) =>
  [...new Set(sentence.match(PLACE) ?? [])].filter((place) => place !== '{{action}}').sort();

/** Keys of a code: `code`, `code/2` and so on. */
const sentencesOf = (english: Sentences, code: string) =>
  Object.entries(english).flatMap(([key, sentence]) => (key.split('/')[0] === code ? [sentence] : []));

/** Refusals that only a program can cause, or an address of the API: who writes programs reads English. */
const FOR_PROGRAMS = ['SEATWELL_METRICS_TOKEN', 'The cursor', 'This cursor', 'There is no {{}} {{}}'];
/** Codes that a value ends, and sentences that only put a place before what another said. */
const HANDS_ON = [/^schema-/, /^\{\{\}\}-unknown$/];
/** Fields that a question is asked about, given where others give its code. */
const FIELDS = ['standard', 'boltCount', 'gasketCount'];
/** Codes that are handed on as a value. */
const HANDED_ON = ['wrong-secret', 'wrong-sign-in'];

/** Codes that name the side of a limit, and messages that only hand on what another said. */
const bySide = (code: string) =>
  code === '{{}}-code-advisory' ? ['above-code-advisory', 'below-code-advisory'] : [code];
const handsOn = (sentence: string) => /^(\{\{\}\}[: ]*)+$/.test(plain(sentence));

describe('sentences of the calculation', async () => {
  const english = await loadSentences('calculation', 'en');
  const said = sentencesIn('packages/calc/src', { refuse: 1, fault: 0 }, [
    'message',
    'covered',
    'cap',
    'word',
    'GASKET_CURVES_SOURCE',
  ])
    .filter(({ code, sentence }) => code !== '{{}}' && !handsOn(sentence))
    .flatMap((each) => bySide(each.code).map((code) => ({ ...each, code })));

  test('each warning, remedy and refusal of the sources has its sentence, word for word', () => {
    expect(said.length).toBeGreaterThan(150);
    const missing = said.filter(({ code, sentence }) => {
      const side = code.split('-')[0] ?? '';
      const wanted = plain(sentence.replace('The target lies {{}}', `The target lies ${side}`));
      return !sentencesOf(english, code).some((known) => plain(known) === wanted);
    });
    expect(missing.map(({ code, sentence }) => `${code}: ${sentence}`)).toEqual([]);
  });

  test('none is kept that the sources no longer say', () => {
    const codes = new Set(said.map(({ code }) => code));
    for (const family of GASKET_FAMILY_CODES) codes.add(`retightening-${retighteningRule(family).afterHot}`);
    expect(Object.keys(english).filter((key) => !codes.has(key.split('/')[0] ?? ''))).toEqual([]);
  });

  test('each rule of retightening has its sentence, word for word', () => {
    for (const family of GASKET_FAMILY_CODES) {
      const { afterHot, sentence } = retighteningRule(family);
      expect(english[`retightening-${afterHot}`]).toBe(sentence);
    }
  });
});

describe('sentences of the server', async () => {
  const english = await loadSentences('problems', 'en');
  const said = sentencesIn('apps/server/src', { Problem: 0, refused: 1, missing: 2 }, [])
    .filter(
      ({ code, sentence }) => code !== '{{}}' && !handsOn(sentence) && !HANDS_ON.some((shape) => shape.test(code)),
    )
    .filter(({ sentence }) => !FOR_PROGRAMS.some((words) => sentence.includes(words)));

  test('each refusal, reason and note has its sentence, word for word', () => {
    expect(said.length).toBeGreaterThan(120);
    const missing = said.filter(
      ({ code, sentence }) => !sentencesOf(english, code).some((known) => plain(known) === plain(sentence)),
    );
    expect(missing.map(({ code, sentence }) => `${code}: ${sentence}`)).toEqual([]);
  });

  test('none is kept that the server no longer says', () => {
    const codes = new Set(said.map(({ code }) => code));
    expect(
      Object.keys(english).filter(
        (key) => !codes.has(key.split('/')[0] ?? '') && !HANDED_ON.includes(key.split('/')[0] ?? ''),
      ),
    ).toEqual([]);
  });
});

describe('sentences of the reading of registers', async () => {
  const english = await loadSentences('register', 'en');
  const server = await loadSentences('problems', 'en');
  const said = [
    ...sentencesIn('packages/workflow/src/register-reading', { refuse: 0, ask: 0, shown: 2 }, []),
    ...sentencesIn('apps/server/src/features/import', { note: 2 }, []),
  ].filter(({ code, sentence }) => code !== '{{}}' && !handsOn(sentence) && !FIELDS.includes(sentence));

  test('each thing wrong with a cell, and each question, has its sentence, word for word', () => {
    expect(said.length).toBeGreaterThan(50);
    const missing = said.filter(({ code, sentence }) => {
      const known = [
        ...sentencesOf(english, code),
        ...sentencesOf(server, code),
        ...sentencesOf(english, `*-${code.split('-').at(-1)}`),
      ];
      return !known.some((each) => plain(each) === plain(sentence));
    });
    expect(missing.map(({ code, sentence }) => `${code}: ${sentence}`)).toEqual([]);
  });

  test('are read by what they are about, with the name of the field', async () => {
    const own = await loadSentences('register', 'es');
    const empty = { code: 'bolt-count-missing', message: 'The bolt count is empty. Enter the bolt count.' };
    const named = sayIn(english, own, empty, (name, value) => (name.startsWith('what') ? 'Pernos' : value));
    expect(named).toBe('«Pernos» está vacío. Ingresar «Pernos».');
  });
});

describe('what the calculation says of a joint', () => {
  const cautious = tighteningSequence({
    boltCount: 20,
    pattern: 'circular',
    numbering: 'clockwise',
    tools: 1,
    passPercents: [50, 100],
  });
  const refused = () => {
    try {
      tighteningSequence({
        boltCount: 10,
        pattern: 'legacy',
        numbering: 'clockwise',
        tools: 1,
        group: 3,
        passPercents: [50, 100],
      });
    } catch (error) {
      if (error instanceof CalcRefusal) return error.errors[0];
    }
    throw new Error('Ten bolts were taken in groups of three.');
  };

  test.each(LANGUAGES.filter((each) => each !== 'en'))('is read in %s with its values', async (language) => {
    const books = [await loadSentences('calculation', 'en'), await loadSentences('calculation', language)] as const;
    expect(cautious.warnings.length).toBeGreaterThan(0);
    for (const warning of cautious.warnings) expect(sayIn(...books, warning)).not.toBe(warning.message);
    const refusal = refused();
    if (!refusal) throw new Error('no refusal');
    expect(sayIn(...books, refusal)).not.toBe(refusal.message);
    expect(sayIn(...books, refusal)).toMatch(/10.*3|3.*10/);
  });

  test('of a code or sentence that is new stays in English', async () => {
    const books = [await loadSentences('calculation', 'en'), await loadSentences('calculation', 'es')] as const;
    for (const said of [
      { code: 'never-heard', message: 'New.' },
      { code: 'galling', message: 'Another sentence.' },
    ])
      expect(sayIn(...books, said)).toBe(said.message);
  });
});

describe.each(['calculation', 'problems', 'register'] as const)('the book “%s”', (book) => {
  test.each(LANGUAGES)('has every sentence in %s with its values', async (language) => {
    const english = await loadSentences(book, 'en');
    const own = await loadSentences(book, language);
    expect(Object.keys(own)).toEqual(Object.keys(english));
    for (const [key, sentence] of Object.entries(own)) {
      expect(placesIn(sentence), key).toEqual(placesIn(english[key] ?? ''));
      expect(sentence, key).not.toMatch(/!/);
      if (language !== 'en' && /[a-z]{5}/.test(sentence.replaceAll(PLACE, '')))
        expect(sentence, key).not.toBe(english[key]);
    }
  });
});
