import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { defaultThreads, parseBolt } from '../../src/register-reading/bolt.ts';
import { inchText } from '../../src/register-reading/fraction.ts';
import { nominalDiameters, nominalPipeSizes, pairedSize } from '../../src/register-reading/nominal-sizes.ts';
import { classes, parseRating, pressureNumbers } from '../../src/register-reading/rating.ts';
import { parseSize } from '../../src/register-reading/size.ts';
import { codeOf, questionOf, valueRead } from './support.ts';

describe('nominal sizes as the trade writes them', () => {
  it.each([
    ['1 1/2"', 'NPS1.5'],
    ['1½', 'NPS1.5'],
    ['1½"', 'NPS1.5'],
    ['1-1/2', 'NPS1.5'],
    ['1.1/2"', 'NPS1.5'],
    ['1 1/2 in', 'NPS1.5'],
    ['1 ½ inch', 'NPS1.5'],
    ['1,5"', 'NPS1.5'],
    ['NPS 1½', 'NPS1.5'],
    ['1 1/2″ NB', 'NPS1.5'],
    ['¾"', 'NPS0.75'],
    ['.75', 'NPS0.75'],
    ['DN40', 'DN40'],
    ['DN 40', 'DN40'],
    ['dn\u00a040', 'DN40'],
    ['40 NB', 'DN40'],
    ['NB 40', 'DN40'],
    ['40 mm', 'DN40'],
    ['NW 50', 'DN50'],
    ['24 NB', 'NPS24'],
    [1.5, 'NPS1.5'],
    [8, 'NPS8'],
    [80, 'DN80'],
    ['200', 'DN200'],
  ])('%s is %s', (written, size) => expect(valueRead(parseSize(written))).toEqual({ size }));

  it.each([10, 20, 32, 40, 50])('a bare %i is an NPS and a DN: it is asked', (size) => {
    expect(questionOf(parseSize(size)).choices.map((choice) => choice.value)).toEqual(['NPS', 'DN']);
    expect(valueRead(parseSize(size, 'NPS'))).toEqual({ size: `NPS${size}` });
    expect(valueRead(parseSize(String(size), 'DN'))).toEqual({ size: `DN${size}` });
  });

  it.each([
    ['7"', 'size-not-nominal'],
    ['DN 45', 'size-not-nominal'],
    ['6x4', 'two-sizes'],
    ['DN 2"', 'size-contradicts-itself'],
    ['11/2', 'size-unreadable'],
    ['six inch', 'size-unreadable'],
    ['', 'size-missing'],
    [-8, 'size-unreadable'],
    [Number.NaN, 'size-unreadable'],
    [new Date('2026-01-02'), 'sheet-made-a-date'],
  ])('%s is refused: %s', (written, code) => expect(codeOf(parseSize(written))).toBe(code));

  it('a refusal names the value and the nearest sizes', () => {
    const refused = parseSize('7"');
    expect(refused.ok === false && refused.message).toMatch(/"7"".*NPS 6 and NPS 8/);
  });

  const inches = fc.constantFrom(...nominalPipeSizes);
  const inchForms = [
    (text: string) => `${text}"`,
    (text: string) => `${text} in`,
    (text: string) => `NPS ${text}`,
    (text: string) => `NPS${text}`,
    (text: string) => `${text} inch`,
    (text: string) => `${text.replace(' ', '-')}"`,
    (text: string) => `${text.replace(' ', '.')}″`,
    (text: string) => ` ${text}'' `,
    (text: string) => `${text}" NB`,
    (text: string) =>
      `${text.replace('1/2', '½').replace('1/4', '¼').replace('3/4', '¾').replace('1/8', '⅛').replace('3/8', '⅜')}"`,
  ];
  it('every written form of every NPS reads as that NPS', () => {
    fc.assert(
      fc.property(inches, fc.constantFrom(...inchForms), (nps, form) => {
        expect(valueRead(parseSize(form(inchText(nps))))).toEqual({ size: `NPS${nps}` });
        expect(valueRead(parseSize(form(String(nps))))).toEqual({ size: `NPS${nps}` });
      }),
      { numRuns: 1000 },
    );
  });
  it('every written form of every DN reads as that DN', () => {
    const forms = [
      (dn: number) => `DN${dn}`,
      (dn: number) => `DN ${dn}`,
      (dn: number) => `dn-${dn}`.replace('-', ' '),
      (dn: number) => `${dn} DN`,
      (dn: number) => `${dn}mm`,
    ];
    fc.assert(
      fc.property(fc.constantFrom(...nominalDiameters), fc.constantFrom(...forms), (dn, form) => {
        expect(valueRead(parseSize(form(dn)))).toEqual({ size: `DN${dn}` });
      }),
      { numRuns: 500 },
    );
  });
  it('the pair of the pair of a size is the size', () => {
    for (const nps of nominalPipeSizes) expect(pairedSize(pairedSize(`NPS${nps}`)!)).toBe(`NPS${nps}`);
  });
  it('whatever is typed, reading a size ends in a value, a refusal or a question', () => {
    fc.assert(
      fc.property(
        fc.oneof(fc.string({ unit: 'grapheme' }), fc.double(), fc.stringMatching(/^[\d ./"-]{0,12}$/)),
        (cell) => {
          const reading = parseSize(cell);
          if (reading.ok === true) expect(reading.value.size).toMatch(/^(NPS\d+(\.\d+)?|DN\d+)$/);
          else if (reading.ok === false) expect(reading.message.length).toBeGreaterThan(20);
          else expect(reading.ask.choices.length).toBeGreaterThan(1);
        },
      ),
    );
  });
});

describe('ratings', () => {
  it.each([
    '150',
    '150#',
    'CL150',
    'CL 150',
    'Class 150',
    '#150',
    '150 lb',
    '150LBS',
    'ANSI 150',
    'ASME Class 150',
    'cl.150',
  ])('%s is class 150', (written) => expect(valueRead(parseRating(written))).toEqual({ rating: '150' }));
  it.each(['PN16', 'PN 16', 'pn16', '16', 'PN.16'])('%s is PN 16', (written) =>
    expect(valueRead(parseRating(written))).toEqual({ rating: 'PN16' }),
  );
  it('reads the facing behind the rating', () => {
    expect(valueRead(parseRating('300# RF'))).toEqual({ rating: '300', facing: 'raised-face' });
    expect(valueRead(parseRating('900RTJ'))).toEqual({ rating: '900', facing: 'ring-joint' });
  });
  it('asks for 250 and 400, which are classes and pressure numbers, unless the column says', () => {
    expect(questionOf(parseRating(400)).code).toBe('rating-system');
    expect(valueRead(parseRating(400, 'class'))).toEqual({ rating: '400' });
    expect(valueRead(parseRating('250', 'PN'))).toEqual({ rating: 'PN250' });
  });
  it('asks whether the ISO name of a class is meant', () => {
    expect(questionOf(parseRating('PN20')).choices).toEqual([{ value: 'class 150', label: 'class 150' }]);
  });
  it.each([
    ['155', 'rating-unknown'],
    ['155#', 'rating-not-a-class'],
    ['PN 17', 'rating-not-a-pn'],
    ['PN64', 'rating-not-a-pn'],
    ['10K', 'rating-other-standard'],
    ['heavy', 'rating-unreadable'],
    ['', 'rating-missing'],
  ])('%s is refused: %s', (written, code) => expect(codeOf(parseRating(written))).toBe(code));
  it('every written form of every rating reads as that rating', () => {
    const forms = ['#', '# ', ' lb', 'LBS', ' CL'].map((tail) => (value: number) => `${value}${tail}`.trim());
    const heads = ['#', 'CL', 'CL ', 'Class ', 'ANSI ', 'ASME '].map((head) => (value: number) => `${head}${value}`);
    for (const value of classes)
      for (const form of [...forms, ...heads])
        expect(valueRead(parseRating(form(value)))).toEqual({ rating: String(value) });
    for (const value of pressureNumbers)
      for (const form of [`PN${value}`, `PN ${value}`, `pn ${value}`])
        expect(valueRead(parseRating(form))).toEqual({ rating: `PN${value}` });
  });
});

describe('bolts', () => {
  it.each([
    ['5/8"', '5/8-11 UNC'],
    ['5/8', '5/8-11 UNC'],
    ['⅝"', '5/8-11 UNC'],
    ['5/8-11 UNC', '5/8-11 UNC'],
    ['5/8"-11UNC', '5/8-11 UNC'],
    ['0.625', '5/8-11 UNC'],
    [0.63, '5/8-11 UNC'],
    [1, '1-8 UNC'],
    ['1"-8UN', '1-8 UNC'],
    ['1 1/8', '1 1/8-8 UN'],
    ['1-1/8-8 UN', '1 1/8-8 UN'],
    ['1-1/8"', '1 1/8-8 UN'],
    ['1.125', '1 1/8-8 UN'],
    ['1 1/8-7 UNC', '1 1/8-7 UNC'],
    ['1 1/4" 8UN', '1 1/4-8 UN'],
    ['M16', 'M16'],
    ['M 16', 'M16'],
    ['m16x2', 'M16'],
    ['M16 x 2.0', 'M16'],
    ['M30x3', 'M30x3'],
    ['M36 × 4', 'M36'],
    [20, 'M20'],
    ['M72x6', 'M72x6'],
  ])('%s is %s', (written, thread) => expect(valueRead(parseBolt(written))).toEqual({ thread }));
  it('reads count and length that stand in the same cell', () => {
    expect(valueRead(parseBolt('8 x M16 x 90'))).toEqual({ thread: 'M16', count: 8, length_mm: 90 });
    expect(valueRead(parseBolt('M20x90'))).toEqual({ thread: 'M20', length_mm: 90 });
    expect(valueRead(parseBolt('M20x2.5x90'))).toEqual({ thread: 'M20', length_mm: 90 });
    expect(valueRead(parseBolt('5/8" x 3 1/4"'))).toEqual({ thread: '5/8-11 UNC', length_mm: 82.6 });
    expect(valueRead(parseBolt('3/4" x 110mm'))).toEqual({ thread: '3/4-10 UNC', length_mm: 110 });
    expect(valueRead(parseBolt('8 x 5/8"'))).toEqual({ thread: '5/8-11 UNC', count: 8 });
  });
  it.each([
    ['M17', 'bolt-not-standard'],
    ['5/9', 'bolt-unreadable'],
    ['0.7', 'bolt-not-standard'],
    ['M72', 'bolt-pitch-missing'],
    ['M16 x 5000', 'bolt-length-implausible'],
    ['5/8-13', 'bolt-thread-unknown'],
    ['big', 'bolt-unreadable'],
    ['', 'bolt-missing'],
    [new Date('2026-08-05'), 'sheet-made-a-date'],
  ])('%s is refused: %s', (written, code) => expect(codeOf(parseBolt(written))).toBe(code));
  it('every default thread reads as itself, spaced, hyphened and by diameter alone', () => {
    for (const thread of defaultThreads) {
      expect(valueRead(parseBolt(thread))).toEqual({ thread });
      expect(valueRead(parseBolt(thread.replace(/^(\d+) (\d)/, '$1-$2')))).toEqual({ thread });
      if (!thread.startsWith('M'))
        expect(valueRead(parseBolt(`${thread.replace(/-\d+ UNC?$/, '')}"`))).toEqual({ thread });
    }
  });
});
