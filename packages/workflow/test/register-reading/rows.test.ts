import { describe, expect, it } from 'vitest';
import type { ColumnMapping } from '../../src/register-reading/fields.ts';
import type { LookupFlange } from '../../src/register-reading/fill-from-standard.ts';
import type { Cell } from '../../src/register-reading/reading.ts';
import { readRegisterRows } from '../../src/register-reading/register-reader.ts';
import type { RegisterOptions } from '../../src/register-reading/register-values.ts';

// ASME B16.5-2020 table 7 (NPS 8 class 150: 8 bolts 3/4 in) and EN 1092-1:2018 (DN 65 PN 16: 8 bolts M16, 4 by
// agreement; DN 100 PN 16: 8 bolts M16): from memory of the standards.
const lookupFlange: LookupFlange = (standard, size, rating, boltCount) => {
  const key = `${standard} ${size} ${rating}`;
  if (key === 'ASME-B16.5 NPS8 150') return { found: true, boltCount: 8, boltThread: '3/4-10 UNC' };
  if (key === 'ASME-B16.5 NPS10 600') return { found: true, boltCount: 16, boltThread: '1-1/4-8 UN' };
  if (key === 'EN-1092-1 DN100 PN16') return { found: true, boltCount: 8, boltThread: 'M16' };
  if (key === 'EN-1092-1 DN65 PN16') {
    if (boltCount === undefined)
      return { found: false, code: 'bolt-count-must-be-given', message: '4 or 8', boltCounts: [4, 8] };
    return { found: true, boltCount, boltThread: 'M16' };
  }
  return { found: false, code: 'flange-not-in-table', message: `${key} is not in the table. Check it.` };
};

function readTable(headers: string[], rows: Cell[][], mapping: ColumnMapping, options: RegisterOptions = {}) {
  return readRegisterRows({
    rows: rows.map((cells, index) => ({ rowNumber: index + 2, cells })),
    headers,
    mapping,
    options,
    lookupFlange,
  });
}
const sizeColumns: ColumnMapping = { tag: 0, size: 1, rating: 2, boltCount: 3, boltThread: 4 };
const readSizes = (rows: Cell[][], options?: RegisterOptions) =>
  readTable(['Tag', 'Size', 'Rating', 'Bolts', 'Bolt size'], rows, sizeColumns, options);

describe('filling from the standard', () => {
  it('fills standard, bolt count and thread where the sheet has none, and says so', () => {
    const row = readSizes([['J-1', '8"', '150#', null, null]]).rows[0]!;
    expect(row.values).toEqual({
      tag: 'J-1',
      size: 'NPS8',
      rating: '150',
      kind: 'flange-pair',
      standard: 'ASME-B16.5',
      boltCount: 8,
      boltThread: '3/4-10 UNC',
      gasketCount: 1,
    });
    expect(row.filled).toEqual(['kind', 'standard', 'boltCount', 'boltThread', 'gasketCount']);
    expect(row.problems).toEqual([]);
  });
  it('finds the ASME flange of a DN and the EN flange of an NPS', () => {
    expect(readSizes([['J-1', 'DN 200', '150', null, null]]).rows[0]!.values).toMatchObject({
      size: 'DN200',
      boltCount: 8,
    });
    expect(readSizes([['J-1', '4"', 'PN16', null, null]]).rows[0]!.values).toMatchObject({
      standard: 'EN-1092-1',
      boltThread: 'M16',
    });
  });
  it('shows a contradiction and keeps what the sheet says', () => {
    const row = readSizes([['J-1', '8"', '150', 12, '7/8"']]).rows[0]!;
    expect(row.values).toMatchObject({ boltCount: 12, boltThread: '7/8-9 UNC' });
    expect(row.problems.map(({ severity, column, code, field }) => ({ severity, column, code, field }))).toEqual([
      { severity: 'shown', column: 'D', code: 'contradicts-standard', field: 'boltCount' },
      { severity: 'shown', column: 'E', code: 'contradicts-standard', field: 'boltThread' },
    ]);
  });
  it('the two ways to write an inch thread are no contradiction', () => {
    expect(readSizes([['J-1', '10"', '600', 16, '1 1/4']]).rows[0]!.problems).toEqual([]);
  });
  it('asks for the bolts of EN 1092-1 DN 65, for all of them or for one row, and fills the thread by the answer', () => {
    const rows: Cell[][] = [
      ['J-1', 'DN65', 'PN16', null, null],
      ['J-2', 'DN65', 'PN16', null, null],
    ];
    const asked = readSizes(rows);
    expect(asked.questions).toMatchObject([
      { key: 'all.boltCount.EN-1092-1.DN65', code: 'bolt-count-must-be-given', rowNumbers: [2, 3] },
    ]);
    expect(asked.rows[0]!.values.boltThread).toBeUndefined();
    const answered = readSizes(rows, { answers: { 'all.boltCount.EN-1092-1.DN65': 8, 'row.3.boltCount': 4 } });
    expect(answered.rows.map((row) => row.values.boltCount)).toEqual([8, 4]);
    expect(answered.rows[0]!.values.boltThread).toBe('M16');
    expect(answered.questions).toEqual([]);
  });
  it('takes the bolt count of DN 65 from the sheet', () => {
    expect(readSizes([['J-1', 'DN65', 'PN16', 4, null]]).rows[0]!).toMatchObject({
      values: { boltCount: 4, boltThread: 'M16' },
      asks: [],
    });
  });
  it('does not fill over a cell that could not be read', () => {
    const row = readSizes([['J-1', '8"', '150', 'eight', null]]).rows[0]!;
    expect(row.values.boltCount).toBeUndefined();
    expect(row.problems).toMatchObject([
      { severity: 'error', column: 'D', value: 'eight', code: 'bolt-count-unreadable' },
    ]);
  });
  it('above NPS 24 it asks for the series', () => {
    const asked = readSizes([['J-1', '30"', '150', null, null]]);
    expect(asked.questions).toMatchObject([{ key: 'all.standard.b16.47', code: 'standard-series' }]);
    const answered = readSizes([['J-1', '30"', '150', null, null]], {
      answers: { 'all.standard.b16.47': 'ASME-B16.47-B' },
    });
    expect(answered.rows[0]!.values.standard).toBe('ASME-B16.47-B');
    expect(
      readSizes([['J-1', '30"', '150', null, null]], { defaultStandard: 'ASME-B16.47-A' }).rows[0]!.values.standard,
    ).toBe('ASME-B16.47-A');
  });
  it('shows a flange that the table does not have', () => {
    expect(readSizes([['J-1', '22"', '900', null, null]]).rows[0]!.problems).toMatchObject([
      { severity: 'shown', code: 'flange-not-in-table' },
    ]);
  });
});

describe('inserts', () => {
  const headers = ['Tag', 'Type', 'Gaskets'];
  const mapping: ColumnMapping = { tag: 0, kind: 1, gasketCount: 2 };
  it('asks how many gaskets an insert has', () => {
    const asked = readTable(
      headers,
      [
        ['J-1', 'spade', null],
        ['J-2', 'flange', null],
      ],
      mapping,
    );
    expect(asked.questions).toMatchObject([{ key: 'all.gasketCount.insert', rowNumbers: [2] }]);
    expect(asked.rows[1]!.values.gasketCount).toBe(1);
    const answered = readTable(headers, [['J-1', 'spade', null]], mapping, {
      answers: { 'all.gasketCount.insert': 2 },
    });
    expect(answered.rows[0]!.values).toMatchObject({ kind: 'insert', insert: 'spade', gasketCount: 2 });
  });
  it('shows an insert with a single gasket', () => {
    expect(readTable(headers, [['J-1', 'spade', 1]], mapping).rows[0]!.problems).toMatchObject([
      { severity: 'shown', code: 'insert-with-one-gasket' },
    ]);
  });
});

describe('questions that a column settles', () => {
  it('bare sizes are inches where others of the column can only be inches', () => {
    const reading = readSizes([
      ['J-1', 10, '600', null, null],
      ['J-2', 1.5, '600', 4, '3/4'],
    ]);
    expect(reading.rows[0]!.values.size).toBe('NPS10');
    expect(reading.columns.find((column) => column.field === 'size')?.sizeSystem).toBe('NPS');
  });
  it('asks once for the column where nothing settles it, or where the column contradicts itself', () => {
    expect(
      readSizes([
        ['J-1', 10, '150', null, null],
        ['J-2', 20, '150', null, null],
      ]).questions,
    ).toMatchObject([{ key: 'column.size.size-system', rowNumbers: [2, 3] }]);
    expect(
      readSizes([
        ['J-1', 10, '150', null, null],
        ['J-2', 1.5, '150', null, null],
        ['J-3', 200, '150', null, null],
      ]).questions,
    ).toMatchObject([{ key: 'column.size.size-system', rowNumbers: [2] }]);
    expect(
      readSizes([['J-1', 10, '150', null, null]], { answers: { 'column.size.size-system': 'DN' } }).rows[0]!.values
        .size,
    ).toBe('DN10');
  });
  it('dates are asked once, unless one date of the column has one order only', () => {
    const mapping: ColumnMapping = { tag: 0, plannedDate: 1 };
    const open = readTable(
      ['Tag', 'Date'],
      [
        ['J-1', '05/03/2026'],
        ['J-2', '06/03/2026'],
      ],
      mapping,
    );
    expect(open.questions).toMatchObject([{ key: 'column.plannedDate.date-order', rowNumbers: [2, 3] }]);
    const settled = readTable(
      ['Tag', 'Date'],
      [
        ['J-1', '05/03/2026'],
        ['J-2', '26/03/2026'],
      ],
      mapping,
    );
    expect(settled.rows[0]!.values.plannedDate).toBe('2026-03-05');
    expect(settled.columns[1]).toMatchObject({ dateOrder: 'dmy' });
    const chosen = readTable(['Tag', 'Date'], [['J-1', '05/03/2026']], mapping, { dateOrder: 'mdy' });
    expect(chosen.rows[0]!.values.plannedDate).toBe('2026-05-03');
  });
  it('units come from the header, from an answer, or are asked', () => {
    const mapping: ColumnMapping = { tag: 0, designPressure: 1, designTemperature: 2 };
    const read = readTable(['Tag', 'Pressure (kg/cm²)', 'Temp [°F]'], [['J-1', '10,5', 212]], mapping).rows[0]!.values;
    expect(read.designPressure).toEqual({ si: 1.02969825, entered: { value: 10.5, unit: 'kgf/cm²' } });
    expect(read.designTemperature?.si).toBe(100);
    const open = readTable(['Tag', 'Pressure', 'Temp'], [['J-1', 10, 50]], mapping);
    expect(open.questions.map((question) => question.key)).toEqual([
      'column.designPressure.pressure-unit',
      'column.designTemperature.temperature-unit',
    ]);
    const answered = readTable(['Tag', 'Pressure', 'Temp'], [['J-1', 10, 50]], mapping, {
      answers: { 'column.designPressure.pressure-unit': 'bar' },
      units: { designTemperature: '°C' },
    });
    expect(answered.rows[0]!.values.designPressure?.si).toBe(1);
    expect(answered.questions).toEqual([]);
  });
  it('1,234 is read by the other numbers of its column', () => {
    const mapping: ColumnMapping = { tag: 0, designPressure: 1 };
    const header = ['Tag', 'Pressure (kPa)'];
    expect(
      readTable(
        header,
        [
          ['J-1', '1,234'],
          ['J-2', '12,5'],
        ],
        mapping,
      ).rows[0]!.values.designPressure?.entered.value,
    ).toBe(1.234);
    expect(
      readTable(
        header,
        [
          ['J-1', '1,234'],
          ['J-2', '12.5'],
        ],
        mapping,
      ).rows[0]!.values.designPressure?.entered.value,
    ).toBe(1234);
    expect(readTable(header, [['J-1', '1,234']], mapping).questions).toMatchObject([{ code: 'decimal-mark' }]);
  });
  it('one answer settles a word for all its rows', () => {
    const mapping: ColumnMapping = { tag: 0, kind: 1, criticality: 2 };
    const rows: Cell[][] = [
      ['J-1', 'Blind', 'High'],
      ['J-2', 'blind', 'high'],
    ];
    const asked = readTable(['Tag', 'Type', 'Crit'], rows, mapping);
    expect(asked.questions.map(({ key, rowNumbers }) => ({ key, rowNumbers }))).toEqual([
      { key: 'word.kind.blind', rowNumbers: [2, 3] },
      { key: 'word.criticality.high', rowNumbers: [2, 3] },
    ]);
    const answered = readTable(['Tag', 'Type', 'Crit'], rows, mapping, {
      answers: { 'word.kind.blind': 'flange-pair', 'word.criticality.high': 'A' },
    });
    expect(answered.rows[1]!.values).toMatchObject({ kind: 'flange-pair', criticality: 'A' });
  });
});

describe('rows', () => {
  it('names the cell of each problem: row, column letter, field, value', () => {
    const reading = readSizes([['J-1', '7"', '155#', null, 'M17']]);
    expect(reading.rows[0]!.rowNumber).toBe(2);
    expect(reading.rows[0]!.problems.map(({ column, field, value, code }) => [column, field, value, code])).toEqual([
      ['B', 'size', '7"', 'size-not-nominal'],
      ['C', 'rating', '155#', 'rating-not-a-class'],
      ['E', 'boltThread', 'M17', 'bolt-not-standard'],
    ]);
  });
  it('a joint without a tag is an error, an empty row is none', () => {
    const reading = readSizes([
      [null, '8"', '150', null, null],
      [null, '', ' ', null, null],
    ]);
    expect(reading.rows).toHaveLength(1);
    expect(reading.rows[0]!.problems).toMatchObject([{ severity: 'error', column: 'A', code: 'tag-missing' }]);
  });
  it('the same tag in two rows is reported, spelling aside', () => {
    expect(
      readSizes([
        ['J-1', '8"', '150', null, null],
        ['j- 1', '8"', '150', null, null],
        ['J-2', '8"', '150', null, null],
      ]).duplicates,
    ).toEqual([{ tag: 'J-1', rowNumbers: [2, 3] }]);
  });
  it('N/A is empty, TBC is empty and shown', () => {
    const row = readSizes([['J-1', '8"', '150', 'N/A', 'TBC']]).rows[0]!;
    expect(row.values.boltCount).toBe(8);
    expect(row.values.boltThread).toBeUndefined();
    expect(row.problems).toMatchObject([{ severity: 'shown', code: 'to-be-confirmed', column: 'E' }]);
  });
  it('a cell of endless junk is refused before any pattern looks at it', () => {
    const junk = '1 '.repeat(100_000);
    const mapping: ColumnMapping = { tag: 0, size: 1, plannedDate: 2, designPressure: 3, kind: 4, remark: 5 };
    const headers = ['Tag', 'Size', 'Date', `Pressure ${'('.repeat(100_000)}`, 'Type', 'Remark'];
    const row = readTable(headers, [['J-1', junk, junk, junk, junk, junk]], mapping).rows[0]!;
    expect(row.problems.map(({ column, code }) => [column, code])).toEqual([
      ['E', 'text-too-long'],
      ['B', 'text-too-long'],
      ['D', 'text-too-long'],
      ['C', 'text-too-long'],
      ['F', 'text-too-long'],
    ]);
  });
  it('a header that names the unit of sizes goes before an answer remembered from another sheet', () => {
    const rows: Cell[][] = [['J-1', 50]];
    const answers = { 'column.size.size-system': 'NPS' };
    const mapping: ColumnMapping = { tag: 0, size: 1 };
    expect(readTable(['Tag', 'Size (mm)'], rows, mapping, { answers }).rows[0]!.values.size).toBe('DN50');
    expect(readTable(['Tag', 'Size'], rows, mapping, { answers }).rows[0]!.values.size).toBe('NPS50');
  });
  it('a formula that failed is an error also where any text would do', () => {
    const mapping: ColumnMapping = { tag: 0, remark: 1 };
    expect(readTable(['Tag', 'Remark'], [['J-1', '#REF!']], mapping).rows[0]!.problems).toMatchObject([
      { severity: 'error', column: 'B', code: 'sheet-error' },
    ]);
  });
  it('splits the packs of a joint and keeps count and length that stand with the bolt', () => {
    const mapping: ColumnMapping = { tag: 0, testPack: 1, boltThread: 2 };
    expect(
      readTable(['Tag', 'TP', 'Bolts'], [['J-1', 'TP-01; TP-02', '8 x M16 x 90']], mapping).rows[0]!.values,
    ).toMatchObject({
      testPack: ['TP-01', 'TP-02'],
      boltCount: 8,
      boltThread: 'M16',
      boltLength: { si: 90 },
    });
  });
  it('a size that the sheet turned into a date is refused with the remedy', () => {
    expect(readSizes([['J-1', new Date(Date.UTC(2026, 0, 2)), '150', null, null]]).rows[0]!.problems).toMatchObject([
      { code: 'sheet-made-a-date', column: 'B' },
    ]);
  });
  it('a sheet full of anything gives values, problems or questions, and never NaN', () => {
    const junk: Cell[] = [
      '',
      'x'.repeat(5000),
      '=1+1',
      Number.NaN,
      Number.POSITIVE_INFINITY,
      -1,
      true,
      new Date(Number.NaN),
      '💥',
      '0',
      '1e9',
    ];
    const mapping: ColumnMapping = {
      tag: 0,
      kind: 1,
      size: 2,
      rating: 3,
      boltCount: 4,
      boltThread: 5,
      boltLength: 6,
      designPressure: 7,
      designTemperature: 8,
      plannedDate: 9,
      remark: 10,
    };
    const rows = junk.map((_, shift) => junk.map((__, index) => junk[(index + shift) % junk.length]!));
    const reading = readTable([], rows, mapping);
    expect(reading.rows.length).toBeGreaterThan(5);
    const numbers = JSON.stringify(reading.rows, (_, value) =>
      typeof value === 'number' && !Number.isFinite(value) ? 'not finite' : value,
    );
    expect(numbers).not.toContain('not finite');
  });
});
