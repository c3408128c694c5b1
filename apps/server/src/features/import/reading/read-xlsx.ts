import { type Cell, withoutControlCharacters } from '@seatwell/workflow';
import { InvalidSpreadsheetError, readSheet } from 'read-excel-file/node';
import {
  type CellNote,
  compactRows,
  type ReadingLimits,
  ReadingRefusal,
  type SheetList,
  type SheetReading,
} from './reading-result.ts';
import { refuseImpossibleCells, sheetNotes } from './sheet-notes.ts';
import { requireWorkbook, sheetsOf, type WorkbookSheet } from './workbook-parts.ts';
import { unzipEntry, type ZipEntry, zipEntries } from './zip-archive.ts';

interface Workbook {
  readonly entries: readonly ZipEntry[];
  readonly sheets: readonly WorkbookSheet[];
  readonly part: (name: string, encoding: 'utf8' | 'latin1') => string;
}

function openWorkbook(buffer: Buffer, limits: ReadingLimits): Workbook {
  const entries = zipEntries(buffer, limits);
  requireWorkbook(entries);
  const part = (name: string, encoding: 'utf8' | 'latin1') => {
    const entry = entries.find((candidate) => candidate.name === name);
    if (entry === undefined) {
      throw new ReadingRefusal(
        'damaged',
        `The workbook lacks its part ${name}. Save the register again from a spreadsheet program.`,
      );
    }
    return unzipEntry(buffer, entry).toString(encoding);
  };
  const sheets = sheetsOf(part('xl/workbook.xml', 'utf8'), part('xl/_rels/workbook.xml.rels', 'utf8'));
  if (sheets.length === 0)
    throw new ReadingRefusal('damaged', 'The workbook has no sheet with cells. Save the register as XLSX again.');
  return { entries, sheets, part };
}

/** The sheets of a workbook. Nothing but the list of sheets is unpacked. */
export function listXlsx(buffer: Buffer, limits: ReadingLimits): SheetList {
  const { sheets } = openWorkbook(buffer, limits);
  return { ok: true, format: 'xlsx', sheets: sheets.map(({ name, hidden }) => ({ name, hidden })) };
}

/** Reads a sheet: formulas as their results, date cells as dates, rich text joined, failed formulas as their sign. */
export async function readXlsx(buffer: Buffer, sheetName: string, limits: ReadingLimits): Promise<SheetReading> {
  const workbook = openWorkbook(buffer, limits);
  const sheet = workbook.sheets.find((candidate) => candidate.name === sheetName);
  if (sheet === undefined) {
    const names = workbook.sheets.map(({ name }) => `"${name}"`).join(', ');
    throw new ReadingRefusal('sheet-not-found', `The workbook has no sheet "${sheetName}". It has ${names}.`);
  }
  // Every part that the reader will unpack must keep to its stated size.
  for (const entry of workbook.entries) if (/\.(xml|rels)$/.test(entry.name)) unzipEntry(buffer, entry);
  // Addresses and tags are ASCII: one byte a character is enough to look through them.
  const xml = workbook.part(sheet.part, 'latin1');
  refuseImpossibleCells(xml);
  const notes = sheetNotes(xml);
  const cells = await parsedCells(buffer, sheetName);
  putErrorsBack(cells, notes);
  const rows = compactRows(cells, limits);
  const width = rows.reduce((widest, row) => Math.max(widest, row.cells.length), 0);
  return { ok: true, sheet: sheetName, rows, width, notes };
}

async function parsedCells(buffer: Buffer, sheetName: string): Promise<Cell[][]> {
  try {
    const rows = (await readSheet(buffer, sheetName)) as unknown as Cell[][];
    for (const row of rows) {
      for (let column = 0; column < row.length; column++) {
        const cell = row[column];
        if (typeof cell === 'string') row[column] = withoutControlCharacters(cell).trim() || null;
      }
    }
    return rows;
  } catch (error) {
    if (!(error instanceof InvalidSpreadsheetError)) throw error;
    throw new ReadingRefusal(
      'damaged',
      'The cells of the sheet cannot be read. Save the register again from a spreadsheet program.',
    );
  }
}

/** The reader drops the sign of a failed formula; a cell that looks empty would be filled from the standard. */
function putErrorsBack(rows: Cell[][], notes: readonly CellNote[]): void {
  for (const note of notes) {
    if (note.code === 'merged') continue;
    const [, letters, row] = /^([A-Z]+)(\d+)$/.exec(note.cells) ?? [];
    if (letters === undefined || row === undefined) continue;
    const column = [...letters].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0) - 1;
    while (rows.length < Number(row)) rows.push([]);
    const cells = rows[Number(row) - 1]!;
    while (cells.length <= column) cells.push(null);
    cells[column] ??= note.code === 'formula-error' ? note.message : '#VALUE!';
  }
}
