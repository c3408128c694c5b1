import { type CellNote, ReadingRefusal } from './reading-result.ts';
import { attribute } from './workbook-parts.ts';

/** The last row and column of a sheet (ECMA-376: 1,048,576 rows, columns to XFD). */
const lastRow = 1_048_576;
const mostNotes = 1000;

/**
 * Refuses a sheet whose cells lie where no sheet has any: reading it would fill memory with empty rows.
 * @throws ReadingRefusal damaged
 */
export function refuseImpossibleCells(xml: string): void {
  for (const match of xml.matchAll(/\sr="([A-Z]*)(\d+)"/g)) {
    const [, column, row] = match;
    if (column!.length < 3 && row!.length < 7) continue;
    if (column!.length > 3 || (column!.length === 3 && column! > 'XFD') || Number(row) > lastRow) {
      throw new ReadingRefusal(
        'damaged',
        `The sheet has a cell ${column}${row}, beyond XFD${lastRow}. Save the register again from a spreadsheet program.`,
      );
    }
  }
}

/** Merged cells, failed formulas and formulas that were never calculated, of a sheet's XML. */
export function sheetNotes(xml: string): readonly CellNote[] {
  const notes: CellNote[] = [];
  for (const [tag] of xml.matchAll(/<(?:\w+:)?mergeCell\s[^>]*>/g)) {
    const cells = attribute(tag, 'ref');
    if (cells === undefined || notes.length === mostNotes) continue;
    notes.push({
      cells,
      code: 'merged',
      message: `${cells} are merged: only the first cell holds the value, the others are read as empty.`,
    });
  }
  if (xml.includes('t="e"')) notes.push(...failedFormulas(xml, mostNotes - notes.length));
  if (/<(?:\w+:)?f[\s/>]/.test(xml)) notes.push(...uncalculated(xml, mostNotes - notes.length));
  return notes;
}

function failedFormulas(xml: string, most: number): CellNote[] {
  const notes: CellNote[] = [];
  for (const [, attributes, content] of xml.matchAll(
    /<(?:\w+:)?c(\s[^>]*\bt="e"(?:[^>]*[^/>])?)>(.*?)<\/(?:\w+:)?c>/gs,
  )) {
    if (notes.length === most) break;
    const cells = attribute(attributes!, 'r');
    const shown = /<(?:\w+:)?v>([^<]*)</.exec(content!)?.[1] ?? '#VALUE!';
    if (cells !== undefined) notes.push({ cells, code: 'formula-error', message: shown });
  }
  return notes;
}

function uncalculated(xml: string, most: number): CellNote[] {
  const notes: CellNote[] = [];
  const pattern = /<(?:\w+:)?c(\s[^>]*[^/])>\s*<(?:\w+:)?f(?:\s[^>]*)?(?:\/>|>[^<]*<\/(?:\w+:)?f>)\s*<\/(?:\w+:)?c>/g;
  for (const [, attributes] of xml.matchAll(pattern)) {
    if (notes.length === most) break;
    const cells = attribute(attributes!, 'r');
    if (cells === undefined) continue;
    notes.push({
      cells,
      code: 'formula-without-value',
      message: `${cells} holds a formula without its result. Open the file in a spreadsheet program, let it calculate and save it.`,
    });
  }
  return notes;
}
