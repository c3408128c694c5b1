import { describe, expect, test } from 'vitest';
import { pdfPages } from '../../../../../tests/api/support/pdf-text.ts';
import { jointOf, makeOf, sourceOf } from '../../../../../tests/api/support/sample-sheet.ts';
import { joinPdfs } from './join-pdfs.ts';
import { sheetContent } from './joint-sheet/sheet-content.ts';
import { sheetsPdf } from './joint-sheet/sheets-pdf.ts';

function content(tag: string, count: number) {
  const make = makeOf();
  const bolting = { count, thread: 'M30', grade: 'B7', nutGrade: '2H', length_mm: 200 };
  return sheetContent(sourceOf({ make, joint: jointOf(make, { tag }, { bolting }) }));
}

const batch = async (...sheets: [tag: string, bolts: number][]) =>
  (
    await sheetsPdf(
      sheets.map(([tag, bolts]) => content(tag, bolts)),
      new Map(),
      'batch',
    )
  ).bytes;

const firstTexts = (pdf: Buffer) => pdfPages(pdf).map((page) => page[0]?.text.trim() ?? '');

describe('joined files', () => {
  test('all pages follow in order with all their text', async () => {
    const parts = [await batch(['A-1', 8], ['A-2', 12]), await batch(['B-1', 16])];
    const { bytes, pages } = await joinPdfs(parts, 'A-1 – B-1');
    expect(pages).toBe(6);
    expect(pdfPages(bytes)).toEqual(parts.flatMap((part) => pdfPages(part)));
  });

  test('on both sides of the paper each sheet begins a new leaf', async () => {
    // 64 bolts take three pages.
    const parts = [await batch(['A-1', 64], ['A-2', 8], ['A-3', 64]), await batch(['B-1', 8])];
    const { bytes } = await joinPdfs(parts, 'all');
    expect(firstTexts(bytes)).toEqual(['A-1', 'A-1', 'A-1', '', 'A-2', 'A-2', 'A-3', 'A-3', 'A-3', '', 'B-1', 'B-1']);
  });

  test('the same parts give the same bytes', async () => {
    const part = await batch(['A-1', 8]);
    const [one, other] = [await joinPdfs([part, part], 't'), await joinPdfs([part, part], 't')];
    expect(one.bytes.equals(other.bytes)).toBe(true);
  });

  test('what is no PDF of ours is refused', async () => {
    await expect(joinPdfs([Buffer.from('%PDF-1.7 of somebody else')], 't')).rejects.toThrow(/cannot be joined/);
  });
});
