import { LANGUAGES, type Language } from '@seatwell/contract';
import { describe, expect, test } from 'vitest';
import { pdfFonts, pdfPages } from '../../../../../tests/api/support/pdf-text.ts';
import { procedureOf, sourceOf } from '../../../../../tests/api/support/sample-sheet.ts';
import { handOutPdf } from './hand-out/hand-out-pdf.ts';
import { sheetContent } from './joint-sheet/sheet-content.ts';
import { sheetsPdf } from './joint-sheet/sheets-pdf.ts';
import { paperFigures } from './paper-figures.ts';
import { formContent } from './record-form/form-content.ts';
import { formsPdf } from './record-form/forms-pdf.ts';
import { tagContent } from './tags/tag-content.ts';
import { CARDS } from './tags/tag-geometry.ts';
import { tagsPdf } from './tags/tags-pdf.ts';
import { fill } from './texts/sheet-texts.ts';

/** Everything on the pages, the marks of direction left out. */
const textOn = (pdf: Buffer): string =>
  pdfPages(pdf)
    .flat()
    .map(({ text }) => text)
    .join(' ')
    .replaceAll(/[\u2066-\u2069]/g, '');

const plain = (text: string): string => text.replaceAll(/[\u00a0\u202f]/g, ' ');
/** The digits and words of a text, since shaped letters of Arabic and Devanagari cannot be read off a page. */
const sheetIn = async (language: Language, units: 'SI' | 'US' = 'SI') =>
  plain(textOn((await sheetsPdf([sheetContent(sourceOf(), language, units)], new Map())).bytes));

describe('figures on paper', () => {
  // Decimal marks of CLDR: a comma in Spanish and Portuguese, a point with the digits of wrenches and gauges elsewhere.
  test.each<[Language, string, string]>([
    ['en', '4.5 mm', 'K 0.16'],
    ['es', '4,5 mm', 'K 0,16'],
    ['pt', '4,5 mm', 'K 0,16'],
    ['hi', '4.5 mm', 'K 0.16'],
    ['ar', '4.5 mm', 'K 0.16'],
  ])('in %s a gasket is %s thick and the nut factor %s', async (language, thickness, factor) => {
    const text = await sheetIn(language);
    expect(text).toContain(thickness);
    expect(text).toContain(factor);
    const foreign =
      language === 'es' || language === 'pt' ? /\d\.\d+ (mm|kN|kip|ksi|MPa)\b/ : /\d,\d+ (mm|kN|kip|ksi|MPa)\b/;
    expect(text).not.toMatch(foreign);
  });

  test.each<[Language, string]>([
    ['en', '9 Mar 2027, 06:00'],
    ['es', '9 mar 2027, 06:00'],
    ['pt', '9 de mar. de 2027, 06:00'],
  ])('in %s it was printed at %s', async (language, printed) => {
    expect(await sheetIn(language)).toContain(printed);
  });

  test.each<Language>(['hi', 'ar'])(
    'in %s the day, year and time of printing have the digits of gauges',
    async (language) => {
      const { version } = sheetContent(sourceOf(), language);
      expect(version).toMatch(/9 \p{L}[\p{L}\p{M}]* 2027[,،] 06:00/u);
      expect(await sheetIn(language)).toMatch(/\b2027\s*[,،]\s*06:00/);
    },
  );

  test('no language tells thousands apart by a mark that is a decimal mark to another', () => {
    for (const language of LANGUAGES) {
      const { printed } = paperFigures(language, 'SI');
      expect(plain(printed(1153))).toBe('1153');
      expect(plain(printed(123_456))).toBe('123 456');
    }
  });

  test('who sees US units on the screen reads them on paper; set values stand in both', async () => {
    const text = await sheetIn('en', 'US');
    for (const shown of ['0.18 in', '9.19 in', '290 psi', '248 °F', '370 N·m']) expect(text).toContain(shown);
    expect(text).not.toContain('4.5 mm');
    expect(await sheetIn('es', 'US')).toContain('0,18 in');
  });

  test('a number with decimals that nobody wrote in the language never reaches paper', () => {
    expect(() => fill('K {factor}', { factor: 0.16 })).toThrow(/0\.16.*figures of the language/);
  });
});

describe.each(LANGUAGES)('papers in %s', (language) => {
  test.each([
    ['sheet', () => sheetsPdf([sheetContent(sourceOf(), language)], new Map())],
    ['record form', () => formsPdf([formContent(sourceOf(), language)], language)],
    ['tag', () => tagsPdf([tagContent(sourceOf(), language)], CARDS, language)],
  ])('the %s names its joint, fills every name, and is set in the shipped fonts', async (paper, print) => {
    const { bytes } = await print();
    const text = textOn(bytes);
    expect(text).toContain('U41-P-1107-F3');
    expect(text).not.toMatch(/[{}]/);
    if (paper !== 'tag') expect(text).toMatch(/\b370\b/);
    for (const font of pdfFonts(bytes))
      expect(font).toMatch(/^(AtkinsonHyperlegibleNext|NotoSans(Arabic|Devanagari))-/);
  });

  test('the hand-out draws each bolt once and gives the order', async () => {
    const source = sourceOf();
    const { bytes } = await handOutPdf(
      {
        site: source.site,
        procedure: { ...source.procedure, content: procedureOf() } as never,
        lubricant: source.lubricant,
        recordedAt: '2027-03-08T09:00:00.000Z',
        bolts: 8,
      },
      language,
    );
    const pages = pdfPages(bytes);
    const labels = pages.flatMap((page) => page.filter(({ text }) => /^\d$/.test(text)).map(({ text }) => text));
    for (const bolt of ['1', '2', '3', '4', '5', '6', '7', '8']) expect(labels).toContain(bolt);
    expect(textOn(bytes)).toMatch(/1 5 3 7/);
    expect(textOn(bytes)).not.toMatch(/[{}]/);
  });
});
