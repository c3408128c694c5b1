import { LANGUAGES } from '@seatwell/contract';
import { describe, expect, test } from 'vitest';
import { pdfFonts, pdfPages } from '../../../../../tests/api/support/pdf-text.ts';
import { handOutPdf } from '../sheets/hand-out-pdf.ts';
import { sheetContent } from '../sheets/sheet-content.ts';
import { procedureOf, sourceOf } from '../sheets/sheet-for-tests.ts';
import { sheetsPdf } from '../sheets/sheets-pdf.ts';
import { formContent } from './record-form/form-content.ts';
import { formsPdf } from './record-form/forms-pdf.ts';
import { tagContent } from './tags/tag-content.ts';
import { CARDS } from './tags/tag-geometry.ts';
import { tagsPdf } from './tags/tags-pdf.ts';

/** Everything on the pages, the marks of direction left out. */
const textOn = (pdf: Buffer): string =>
  pdfPages(pdf)
    .flat()
    .map(({ text }) => text)
    .join(' ')
    .replaceAll(/[\u2066-\u2069]/g, '');

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
