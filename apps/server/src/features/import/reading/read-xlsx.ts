import { type Cell, withoutControlCharacters } from '@seatwell/workflow';
import { readSheet } from 'read-excel-file/node';
import {
  type CellNote,
  compactRows,
  type ReadingLimits,
  ReadingRefusal,
  type SheetList,
  type SheetReading,
} from './reading-result.ts';
import { refuseImpossibleCells, sheetNotes } from './sheet-notes.ts';
import { storedZip } from './stored-zip.ts';
import { relatedParts, requireWorkbook, sheetsOf, type WorkbookSheet } from './workbook-parts.ts';
import { unzipEntry, zipEntries } from './zip-archive.ts';

const workbookPart = 'xl/workbook.xml';
const relationsPart = 'xl/_rels/workbook.xml.rels';

interface Workbook {
  readonly sheets: readonly WorkbookSheet[];
  readonly relations: string;
  readonly has: (name: string) => boolean;
  /** Unpacks a part, within the size that the directory states. */
  readonly part: (name: string) => Buffer;
}

function openWorkbook(buffer: Buffer, limits: ReadingLimits): Workbook {
  const entries = zipEntries(buffer, limits);
  requireWorkbook(entries);
  const find = (name: string) => entries.find((entry) => entry.name === name);
  const part = (name: string) => {
    const entry = find(name);
    if (entry !== undefined) return unzipEntry(buffer, entry);
    throw new ReadingRefusal(
      'damaged',
      `The workbook lacks its part ${name}. Save the register again from a spreadsheet program.`,
    );
  };
  const relations = part(relationsPart).toString('utf8');
  const sheets = sheetsOf(part(workbookPart).toString('utf8'), relations);
  if (sheets.length === 0)
    throw new ReadingRefusal('damaged', 'The workbook has no sheet with cells. Save the register as XLSX again.');
  return { sheets, relations, has: (name) => find(name) !== undefined, part };
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
  const sheetXml = workbook.part(sheet.part);
  // Addresses and tags are ASCII: one byte a character is enough to look through them.
  const xml = sheetXml.toString('latin1');
  refuseImpossibleCells(xml);
  const notes = sheetNotes(xml);
  const cells = await parsedCells(checkedArchive(workbook, sheet.part, sheetXml), sheetName);
  putErrorsBack(cells, notes);
  const rows = compactRows(cells, limits);
  const width = rows.reduce((widest, row) => Math.max(widest, row.cells.length), 0);
  return { ok: true, sheet: sheetName, rows, width, notes };
}

/**
 * The archive that the reader gets: only the parts it needs, as unpacked here. The reader goes through the file's
 * own entry headers, which need not agree with the directory that was judged.
 */
function checkedArchive(workbook: Workbook, sheetPart: string, sheetXml: Buffer): Buffer {
  const others = ['sharedStrings', 'styles'].flatMap((type) => [...relatedParts(workbook.relations, type).values()]);
  const names = [...new Set([workbookPart, relationsPart, ...others.filter(workbook.has)])];
  const parts = names.filter((name) => name !== sheetPart).map((name) => ({ name, content: workbook.part(name) }));
  return storedZip([...parts, { name: sheetPart, content: sheetXml }]);
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
    // Whatever the reader stumbles over, it is the content of the file.
    throw new ReadingRefusal(
      'damaged',
      'The cells of the sheet cannot be read. Save the register again from a spreadsheet program.',
      { cause: error },
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
