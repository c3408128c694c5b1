import sharp from 'sharp';
import { describe, expect, test } from 'vitest';
import { pdfFonts, pdfPages, pdfText } from '../../../../../../tests/api/support/pdf-text.ts';
import { jointOf, makeOf, sourceOf, targetOf } from '../../../../../../tests/api/support/sample-sheet.ts';
import { typeset } from '../typesetting/typesetter.ts';
import { sheetContent } from './sheet-content.ts';
import { sheetsPdf } from './sheets-pdf.ts';

const none = new Map<string, Uint8Array>();
const jpeg = (background: string) =>
  sharp({ create: { width: 80, height: 60, channels: 3, background } })
    .jpeg()
    .toBuffer();
const pictures = (pdf: Buffer) => pdf.toString('latin1').match(/\/Subtype \/Image/g)?.length ?? 0;

describe('sheets as PDF', () => {
  test('the photo of a joint is on its sheet; a photo that is not kept leaves the sheet without', async () => {
    const content = sheetContent(sourceOf({ photo: { hash: 'a1', of: 'opened' } }));
    const photos = new Map([['a1', await jpeg('#777777')]]);
    expect(pictures((await sheetsPdf([content], photos)).bytes)).toBe(1);
    expect(pictures((await sheetsPdf([content], none)).bytes)).toBe(0);
  });

  test('the date of the document is that of the record', async () => {
    const make = makeOf({ lastEventAt: '2027-02-03T04:05:06.000Z' });
    const { bytes } = await sheetsPdf([sheetContent(sourceOf({ make, joint: jointOf(make) }))], none);
    expect(bytes.toString('latin1')).toContain('2027-02-03T04:05:06');
  });

  test('what a person typed is printed as typed, whatever signs it has', async () => {
    const make = makeOf();
    const remark = 'Mind #set page(width: 1pt) $x$ *bold* <b> & "quotes" \\ @ref [a] // no comment';
    const { bytes } = await sheetsPdf([sheetContent(sourceOf({ make, joint: jointOf(make, { remark }) }))], none);
    expect(pdfText(bytes).replaceAll(/\s/g, '')).toContain(remark.replaceAll(/\s/g, ''));
  });

  test('the longest entries still leave a sheet that can be read', async () => {
    const make = makeOf();
    const long = 'W'.repeat(200);
    const whereabouts = { ...jointOf(make).whereabouts, line: long, location: long, viewedFrom: long, bolt1At: long };
    const remark = 'reason '.repeat(285);
    const joint = jointOf(make, { tag: long, whereabouts, remark });
    const pages = pdfPages((await sheetsPdf([sheetContent(sourceOf({ make, joint }))], none)).bytes);
    expect(pages[0]?.map(({ text }) => text)).toContain('Where it is');
    for (const run of pages.flat().filter(({ text }) => text.trim() !== '')) {
      expect(run.x).toBeGreaterThan(0);
      expect(run.x).toBeLessThan(595);
    }
  });

  test.each(['en', 'es', 'pt', 'hi', 'ar'] as const)(
    'a tag that goes on in the next line has its own hyphens, in %s',
    async (language) => {
      const make = makeOf();
      // Rows of every length: some end at a hyphen.
      const remark = Array.from({ length: 40 }, (_, index) => `${'x'.repeat(index % 12)} U41-P-P-F3`).join(' ');
      const { bytes } = await sheetsPdf(
        [sheetContent(sourceOf({ make, joint: jointOf(make, { remark }) }), language)],
        none,
      );
      const printed = pdfText(bytes).replaceAll(/[\s\u200b\u2066-\u2069]/g, '');
      expect(printed.split('U41-P-P-F3')).toHaveLength(41);
    },
  );

  test('sheets set at the same time do not take each other’s answers', async () => {
    const tags = ['A-1', 'B-2', 'C-3', 'D-4'];
    const pdfs = await Promise.all(
      tags.map((tag) => {
        const make = makeOf();
        return sheetsPdf([sheetContent(sourceOf({ make, joint: jointOf(make, { tag }) }))], none);
      }),
    );
    expect(pdfs.map(({ bytes }) => pdfPages(bytes)[0]?.[0]?.text)).toEqual(tags);
  });

  test('a document that cannot be set is refused with what the typesetter says, and the next is set', async () => {
    await expect(typeset({ template: '#unknown-word', data: {}, tagged: false })).rejects.toThrow(/unknown variable/);
    expect((await typeset({ template: '#set document(date: none)\nword', data: {}, tagged: false })).pages).toBe(1);
  });

  const pageWith = (pdf: Buffer, words: string) =>
    pdfPages(pdf).findIndex((page) => page.some(({ text }) => text.trim() === words));

  test('cautions and the line to stop and call are on the page of the values, whatever pushes them', async () => {
    const photos = new Map([['a1', await jpeg('#777777')]]);
    const make = makeOf({
      purpose: 'spade-in',
      rejected: true,
      leaking: true,
      retighten: true,
      target: targetOf(370, { insideWindow: false, shortfallReason: 'accepted, memo 12' }),
    });
    const crowded = sheetContent(sourceOf({ make, photo: { hash: 'a1', of: 'found' } }));
    const [banner] = crowded.banners;
    if (!banner) throw new Error('A leaking joint has a banner.');
    // Banner by banner the block comes to every height of the page.
    for (let count = 0; count <= 20; count += 1) {
      const banners = Array.from({ length: count }, () => banner);
      const { bytes } = await sheetsPdf([{ ...crowded, banners }], photos);
      const values = pageWith(bytes, 'Tightening');
      expect(values).toBeGreaterThan(0);
      expect(pageWith(bytes, 'Cautions'), `${count} banners`).toBe(values);
      expect(pageWith(bytes, 'STOP AND CALL'), `${count} banners`).toBe(values);
    }
  });

  test('a page from right to left mirrors neither the bolt plan nor the order of the bolts', async () => {
    const { bytes } = await sheetsPdf([sheetContent(sourceOf(), 'ar')], none);
    const pages = pdfPages(bytes);
    const digits = (pages[0] ?? []).filter(({ text }) => /^\d$/.test(text));
    // Single figures stand in the facts too; those of the plan follow one another.
    const start = digits.findIndex(
      (_, at) =>
        digits
          .slice(at, at + 4)
          .map(({ text }) => text)
          .join('') === '1234',
    );
    const [one, two, three, four] = digits.slice(start);
    // Clockwise from the top: bolt 4 of 12 stands to the right of bolt 1.
    expect([one, two, three, four].map((run) => run?.text)).toEqual(['1', '2', '3', '4']);
    expect(four?.x).toBeGreaterThan(one?.x ?? 0);
    const fours = pages.flat().filter(({ text }) => /^[\u2066-\u2069]*(1 7 4 10|2 8 5 11|3 9 6 12)/.test(text));
    expect(fours.map(({ text }) => text.replaceAll(/[\u2066-\u2069]/g, '').trim())).toEqual([
      '1 7 4 10',
      '2 8 5 11',
      '3 9 6 12',
    ]);
    const places = fours.map(({ x }) => x);
    expect(places).toEqual([...places].sort((a, b) => a - b));
  });

  test('Arabic and Devanagari are set in the fonts that are shipped', async () => {
    const make = makeOf();
    const remark = 'وصلة مفتوحة · सावधानी से';
    const { bytes } = await sheetsPdf([sheetContent(sourceOf({ make, joint: jointOf(make, { remark }) }))], none);
    const families = new Set(pdfFonts(bytes).map((font) => font.replace(/-.*/, '')));
    expect([...families].sort()).toEqual(['AtkinsonHyperlegibleNext', 'NotoSansArabic', 'NotoSansDevanagari']);
  });
});
