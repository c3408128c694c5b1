import ExcelJS from 'exceljs';
import { sampleHeaders, sampleRows } from '../../../apps/server/src/features/import/sample-register.ts';

type Value = string | number | Date | null;

/** A cell of the sheet that is wrong, with what the preview has to say and what a coordinator corrects it to. */
export interface PlantedError {
  readonly rowNumber: number;
  readonly column: string;
  readonly written: Value;
  readonly severity: 'error' | 'shown';
  readonly code: string;
  readonly corrected: Value;
}

export interface SampleRegister {
  readonly bytes: Uint8Array;
  readonly sheet: string;
  /** Row of the headers in the sheet, from 1: title lines stand above. */
  readonly headerRow: number;
  readonly jointCount: number;
  readonly planted: readonly PlantedError[];
  /** Tags that stand in two rows. */
  readonly duplicates: readonly { readonly tag: string; readonly rowNumbers: readonly number[] }[];
  /** Keys of the questions that the import has to ask. */
  readonly questions: readonly string[];
}

const headerRow = 4;
const firstRow = headerRow + 1;
const columnOf = (header: (typeof sampleHeaders)[number]) => sampleHeaders.indexOf(header);
const letterOf = (index: number) =>
  index < 26 ? String.fromCharCode(65 + index) : `A${String.fromCharCode(39 + index)}`;

function plant(
  joint: number,
  header: (typeof sampleHeaders)[number],
  written: Value,
  code: string,
  severity: PlantedError['severity'] = 'error',
  corrected: Value = sampleRows[joint]![columnOf(header)] ?? null,
): PlantedError {
  return { rowNumber: firstRow + joint, column: letterOf(columnOf(header)), written, severity, code, corrected };
}

const planted: readonly PlantedError[] = [
  plant(1, 'Size', '7"', 'size-not-nominal'),
  plant(2, 'Tag', null, 'tag-missing'),
  plant(3, 'Rating', '350#', 'rating-not-a-class'),
  plant(5, 'Bolt size', new Date(Date.UTC(2027, 7, 5)), 'sheet-made-a-date'),
  plant(6, 'Gasket type', 'gskt std', 'gasket-family-unknown'),
  plant(8, 'No. of bolts', 12, 'contradicts-standard', 'shown'),
  plant(9, 'Design pressure (barg)', 'see drawing', 'number-unreadable'),
  plant(10, 'Planned date', '31.02.2027', 'date-unreadable'),
  plant(15, 'Size', 'DN 110', 'size-not-nominal'),
  plant(16, 'Bolt size', 'M17', 'bolt-not-standard'),
  plant(18, 'No. of bolts', 'eight', 'bolt-count-unreadable'),
];

/** Cells left empty or loose so that the import has to ask. */
const asked: readonly (readonly [
  joint: number,
  header: (typeof sampleHeaders)[number],
  written: Value,
  key: string,
])[] = [
  [3, 'No. of gaskets', null, 'all.gasketCount.insert'],
  [17, 'No. of bolts', null, 'all.boltCount.EN-1092-1.DN65'],
  [13, 'Criticality', 'High', 'word.criticality.high'],
  [14, 'Work scope', 'Re-torque', 'word.workScope.re torque'],
];

/** The joint that carries the tag of the first one, in another spelling. */
const twin = 19;

function cellsOf(joint: number, corrected: boolean): Value[] {
  const cells: Value[] = [...sampleRows[joint]!];
  const date = columnOf('Planned date');
  cells[date] = new Date(`${cells[date]}T00:00:00Z`);
  if (joint === twin && !corrected) cells[0] = String(sampleRows[0]![0]).toLowerCase();
  for (const [row, header, written] of asked) if (row === joint) cells[columnOf(header)] = written;
  for (const error of planted) {
    if (error.rowNumber !== firstRow + joint) continue;
    const index = sampleHeaders.findIndex((_, column) => letterOf(column) === error.column);
    cells[index] = corrected ? (index === date ? cells[date]! : error.corrected) : error.written;
  }
  return cells;
}

/**
 * A register as a plant hands it over: title lines above the headers, the sheet's own date cells, a formula, rich
 * text, a merged title, a second sheet, and planted errors.
 *
 * @param options.corrected the same register after somebody corrected the planted errors; its questions stay open
 */
export async function sampleRegister(options: { readonly corrected?: boolean } = {}): Promise<SampleRegister> {
  const corrected = options.corrected === true;
  const book = new ExcelJS.Workbook();
  book.created = new Date(Date.UTC(2027, 0, 4));
  book.addWorksheet('Read me').addRow(['Register of joints, draft for review']);
  const sheet = book.addWorksheet('Joints');
  sheet.addRow(['Register of bolted joints']);
  sheet.mergeCells('A1:F1');
  sheet.addRow(['Draft for review, revision 2']);
  sheet.addRow([]);
  sheet.addRow([...sampleHeaders]).font = { bold: true };
  for (let joint = 0; joint < sampleRows.length; joint++) sheet.addRow(cellsOf(joint, corrected));
  sheet.getColumn(columnOf('Planned date') + 1).numFmt = 'dd/mm/yyyy';
  sheet.getCell(firstRow + 4, columnOf('Test pressure (barg)') + 1).value = { formula: 'V9*1.5', result: 24 };
  sheet.getCell(firstRow + 7, columnOf('Remarks') + 1).value = {
    richText: [{ font: { bold: true }, text: 'davit' }, { text: ' to be checked' }],
  };
  return {
    bytes: new Uint8Array(await book.xlsx.writeBuffer()),
    sheet: 'Joints',
    headerRow,
    jointCount: sampleRows.length,
    planted: corrected ? [] : planted,
    duplicates: corrected ? [] : [{ tag: String(sampleRows[0]![0]), rowNumbers: [firstRow, firstRow + twin] }],
    questions: asked.map(([, , , key]) => key),
  };
}
