import ExcelJS from 'exceljs';
import { describe, expect, it } from 'vitest';
import { listSheets, readSheet } from './read-file.ts';
import type { ReadingFailure, SheetList, SheetReading } from './reading-result.ts';
import { workbookParts, zipOf } from './zip-for-tests.ts';

// Every case runs the worker as the server's build bundles it.
const file = (bytes: Uint8Array, name = 'register.xlsx') => ({ name, bytes });
const csv = (text: string, encoding: BufferEncoding = 'utf8') => file(Buffer.from(text, encoding), 'register.csv');
const rowsOf = (result: SheetReading | ReadingFailure) => {
  if (!result.ok) throw new Error(`${result.error.code}: ${result.error.message}`);
  return result.rows.map((row) => row.cells);
};
const errorOf = (result: SheetList | SheetReading | ReadingFailure) => {
  if (result.ok) throw new Error('the file was read');
  return result.error;
};

async function workbook(fill: (book: ExcelJS.Workbook) => void): Promise<Uint8Array> {
  const book = new ExcelJS.Workbook();
  fill(book);
  return new Uint8Array(await book.xlsx.writeBuffer());
}

describe('CSV files', () => {
  it.each([
    ['comma', 'Tag,Size\nJ-1,"1 1/2"""\n', ','],
    ['semicolon, decimal commas', 'Tag;Druck\nJ-1;12,5\nJ-2;10,0\n', ';'],
    ['tab', 'Tag\tSize\nJ-1\t8"\n', '\t'],
    ['pipe', 'Tag|Size\nJ-1|8\n', '|'],
    ['named in the first line', 'sep=;\nTag;Remark, long\nJ-1;a\n', ';'],
    ['comma with semicolons inside quotes', 'Tag,Packs\nJ-1,"TP-1;TP-2;TP-3"\nJ-2,"TP-1;TP-2;TP-3"\n', ','],
  ])('finds the delimiter: %s', async (_, text, delimiter) => {
    const result = await readSheet(csv(text), 'register.csv');
    expect(rowsOf(result)[1]![0]).toBe('J-1');
    expect(result.ok && result.text?.delimiter).toBe(delimiter);
  });
  it.each([
    ['utf-8', Buffer.from('Tag,Ort\nJ-1,Bühne ½\n', 'utf8')],
    ['utf-8', Buffer.from('\ufeffTag,Ort\nJ-1,Bühne ½\n', 'utf8')],
    ['utf-16le', Buffer.from('\ufeffTag,Ort\nJ-1,Bühne ½\n', 'utf16le')],
    ['utf-16le', Buffer.from('Tag,Ort\nJ-1,Bühne ½\n', 'utf16le')],
    ['utf-16be', Buffer.from('\ufeffTag,Ort\nJ-1,Bühne ½\n', 'utf16le').swap16()],
    ['windows-1252', Buffer.from('Tag,Ort\nJ-1,Bühne ½\n', 'latin1')],
  ])('reads %s', async (encoding, bytes) => {
    const result = await readSheet(file(bytes, 'r.csv'), 'r.csv');
    expect(rowsOf(result)).toEqual([
      ['Tag', 'Ort'],
      ['J-1', 'Bühne ½'],
    ]);
    expect(result.ok && result.text?.encoding).toBe(encoding);
  });
  it('keeps the row numbers of the sheet, quoted line ends and empty cells', async () => {
    const result = await readSheet(csv('Register\r\n\r\nTag,Remark\r\nJ-1,"two\r\nlines"\r\n,,\r\nJ-2,\r\n'), 'x');
    expect(result.ok && result.rows).toEqual([
      { rowNumber: 1, cells: ['Register'] },
      { rowNumber: 3, cells: ['Tag', 'Remark'] },
      { rowNumber: 4, cells: ['J-1', 'two\r\nlines'] },
      { rowNumber: 6, cells: ['J-2'] },
    ]);
  });
  it('strips control characters', async () => {
    expect(
      rowsOf(
        await readSheet(csv(`Tag,Remark,Location,Medium\nJ-1\u200b,a\u0007b,${'north '.repeat(40)},steam\n`), 'x'),
      )[1]!.slice(0, 2),
    ).toEqual(['J-1', 'ab']);
  });
  it('says where a quote is left open', async () => {
    expect(errorOf(await readSheet(csv(`Tag,Remark\nJ-1,"open\n${'J,x\n'.repeat(300_000)}`), 'x')).code).toBe(
      'damaged',
    );
  });
});

describe('XLSX files', () => {
  it('lists its sheets, hidden ones marked', async () => {
    const bytes = await workbook((book) => {
      book.addWorksheet('Flanges & blinds');
      book.addWorksheet('Lists', { state: 'hidden' });
    });
    expect(await listSheets(file(bytes))).toEqual({
      ok: true,
      format: 'xlsx',
      sheets: [
        { name: 'Flanges & blinds', hidden: false },
        { name: 'Lists', hidden: true },
      ],
    });
  });
  it('gives formulas as results, date cells as dates, rich text joined, and notes merged cells', async () => {
    const bytes = await workbook((book) => {
      book.addWorksheet('Other').addRow(['nothing here']);
      const sheet = book.addWorksheet('Register');
      sheet.addRow(['Tag', 'Size', 'Date', 'Bolts', 'Remark', 'Live']);
      sheet.addRow([
        'J-1',
        1.5,
        new Date(Date.UTC(2026, 2, 5)),
        { formula: '2*4', result: 8 },
        { richText: [{ text: 'hot ' }, { font: { bold: true }, text: 'line' }] },
        true,
      ]);
      sheet.addRow([
        'J-2',
        { formula: 'LEFT("DN40x",4)', result: 'DN40' },
        null,
        { formula: '1/0', result: { error: '#DIV/0!' } },
        'a\u0007b',
      ]);
      sheet.mergeCells('A5:A7');
      sheet.getCell('A5').value = 'Unit 2';
    });
    const result = await readSheet(file(bytes), 'Register');
    expect(rowsOf(result)).toEqual([
      ['Tag', 'Size', 'Date', 'Bolts', 'Remark', 'Live'],
      ['J-1', 1.5, new Date(Date.UTC(2026, 2, 5)), 8, 'hot line', true],
      ['J-2', 'DN40', null, '#DIV/0!', 'ab'],
      ['Unit 2'],
    ]);
    expect(result.ok && result.rows.map((row) => row.rowNumber)).toEqual([1, 2, 3, 5]);
    expect(result.ok && result.notes.map(({ code, cells }) => [code, cells])).toEqual([
      ['merged', 'A5:A7'],
      ['formula-error', 'D3'],
    ]);
  });
  it('a formula that was never calculated is no empty cell', async () => {
    const sheet =
      '<sheetData><row r="1"><c r="A1" t="inlineStr"><is><t>Tag</t></is></c><c r="B1"><f>1+1</f></c></row></sheetData>';
    const result = await readSheet(file(zipOf(workbookParts(sheet))), 'Register');
    expect(rowsOf(result)).toEqual([['Tag', '#VALUE!']]);
    expect(result.ok && result.notes[0]?.code).toBe('formula-without-value');
  });
  it('an empty sheet has no rows', async () => {
    const bytes = await workbook((book) => book.addWorksheet('Register'));
    expect(await readSheet(file(bytes), 'Register')).toEqual({
      ok: true,
      sheet: 'Register',
      rows: [],
      width: 0,
      notes: [],
    });
  });
  it('a part that the directory of the archive does not name is never unpacked', async () => {
    const cell = (value: number) => `<sheetData><row r="1"><c r="A1"><v>${value}</v></c></row></sheetData>`;
    const hidden = workbookParts(cell(2), { hidden: true })[2]!;
    const bytes = zipOf([...workbookParts(cell(1)), hidden]);
    expect(rowsOf(await readSheet(file(bytes), 'Register'))).toEqual([[1]]);
  });
  it('names the sheets there are where one is not found', async () => {
    const error = errorOf(await readSheet(file(await workbook((book) => book.addWorksheet('Register'))), 'Registre'));
    expect(error).toEqual({
      code: 'sheet-not-found',
      message: 'The workbook has no sheet "Registre". It has "Register".',
    });
  });
  it('takes 20,000 rows in, slice by slice', async () => {
    const bytes = await workbook((book) => {
      const sheet = book.addWorksheet('Register');
      for (let row = 1; row <= 20_000; row++) sheet.addRow([`J-${row}`, '8"', 150]);
    });
    const result = await readSheet(file(bytes), 'Register');
    expect(result.ok && [result.rows.length, result.rows.at(-1)]).toEqual([
      20_000,
      { rowNumber: 20_000, cells: ['J-20000', '8"', 150] },
    ]);
  });
});

describe('files that are not read, with the reason', () => {
  const oldWorkbook = Buffer.concat([Buffer.from('d0cf11e0a1b11ae1', 'hex'), Buffer.alloc(600)]);
  const sheet = '<sheetData><row r="1"><c r="A1"><v>1</v></c></row></sheetData>';
  it.each([
    ['0 bytes', Buffer.alloc(0), 'file-empty'],
    ['only line ends', Buffer.from('\r\n\r\n  '), 'file-empty'],
    ['the old XLS format', oldWorkbook, 'old-xls'],
    [
      'a workbook with a password',
      Buffer.concat([oldWorkbook, Buffer.from('EncryptedPackage', 'utf16le')]),
      'encrypted',
    ],
    ['an encrypted archive', zipOf(workbookParts(sheet, { encrypted: true })), 'encrypted'],
    ['a PDF', Buffer.from('%PDF-1.7 something'), 'not-a-spreadsheet'],
    ['a web page called xls', Buffer.from('<html><table><tr><td>Tag</td></tr></table></html>'), 'not-a-spreadsheet'],
    [
      'binary bytes',
      Buffer.from(Array.from({ length: 4000 }, (_, index) => (index * 7919 + 13) % 256)),
      'not-a-spreadsheet',
    ],
    ['an archive without a workbook', zipOf([{ name: 'readme.txt', content: 'hello' }]), 'not-a-spreadsheet'],
    ['a text document', zipOf([{ name: 'word/document.xml', content: '<w/>' }]), 'not-a-spreadsheet'],
    ['a workbook cut off', zipOf(workbookParts(sheet)).subarray(0, 300), 'damaged'],
    ['a workbook whose sheet is missing', zipOf(workbookParts(sheet).slice(0, 2)), 'damaged'],
    [
      'a cell beyond the last row',
      zipOf(workbookParts('<sheetData><row r="9999999"><c r="A9999999"><v>1</v></c></row></sheetData>')),
      'damaged',
    ],
    [
      'rows out of order',
      zipOf(
        workbookParts(
          '<sheetData><row r="5"><c r="A5"><v>1</v></c></row><row r="2"><c r="A2"><v>1</v></c></row></sheetData>',
        ),
      ),
      'damaged',
    ],
  ])('%s', async (_, bytes, code) => {
    const error = errorOf(await readSheet(file(bytes), 'Register'));
    expect(error.code).toBe(code);
    expect(error.message).toMatch(/\. .+\.$/);
  });
  it('too large a file, before anything is unpacked', async () => {
    const error = errorOf(await listSheets(file(Buffer.alloc(2000)), { limits: { fileBytes: 1000 } }));
    expect(error.code).toBe('file-too-large');
  });
  it('an archive that unpacks to more than the limit, by its directory', async () => {
    const bomb = zipOf(workbookParts(`<sheetData/>${' '.repeat(30 * 1024 * 1024)}`));
    expect(bomb.length).toBeLessThan(100_000);
    expect(errorOf(await listSheets(file(bomb))).message).toMatch(/times its size/);
    expect(errorOf(await listSheets(file(bomb), { limits: { unzippedBytes: 1024 * 1024 } })).message).toMatch(
      /at most 1 MB/,
    );
  });
  it('an archive whose directory lies about the size', async () => {
    const liar = zipOf(workbookParts(`<sheetData/>${' '.repeat(5 * 1024 * 1024)}`, { statedSize: 1000 }));
    expect(errorOf(await readSheet(file(liar), 'Register')).code).toBe('bomb-like');
  });
  it('more rows or columns than the limit', async () => {
    const text = `Tag,Size\n${'J,8\n'.repeat(50)}`;
    expect(errorOf(await readSheet(csv(text), 'x', { limits: { rows: 20 } })).code).toBe('too-many-rows');
    expect(errorOf(await readSheet(csv('a,b,c,d\n'), 'x', { limits: { columns: 3 } })).code).toBe('too-many-columns');
  });
  it('a file whose reading takes too long is stopped', async () => {
    const text = `Tag,Size\n${'J-1,8\n'.repeat(150_000)}`;
    expect(errorOf(await readSheet(csv(text), 'x', { limits: { seconds: 0.01 } })).code).toBe('time-out');
  });
  it('a file whose reading takes too much memory is stopped, and the next one is read', async () => {
    const text = `Tag,Size\n${Array.from({ length: 150_000 }, (_, row) => `J-${row},north ${row},south ${row}\n`).join('')}`;
    expect(errorOf(await readSheet(csv(text), 'x', { limits: { memoryMb: 24 } })).code).toBe('too-much-memory');
    expect(rowsOf(await readSheet(csv('Tag\nJ-1\n'), 'x'))).toHaveLength(2);
  });
});
