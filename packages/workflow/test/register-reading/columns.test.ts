import { describe, expect, it } from 'vitest';
import { columnLetter, REGISTER_FIELDS } from '../../src/register-reading/fields.ts';
import { guessColumns } from '../../src/register-reading/guess-columns.ts';
import { findHeaderRow, headerRowAt } from '../../src/register-reading/header-row.ts';

const fieldsOf = (headers: string[], rows: (string | number)[][] = []) =>
  guessColumns(headers, rows).columns.map((column) => column.field);

describe('guessing columns', () => {
  it('knows the headers of a plain register', () => {
    expect(
      fieldsOf([
        'Joint No.',
        'Area',
        'System',
        'Sub-system',
        'Line No.',
        'Location',
        'Drawing No.',
        'Joint type',
        'Flange standard',
        'Size (NPS)',
        'Rating',
        'Facing',
        'No. of bolts',
        'Bolt size',
        'Bolt length (mm)',
        'Bolt grade',
        'Gasket type',
        'Gasket material',
        'No. of gaskets',
        'Spade thk (mm)',
        'Service',
        'Design pressure (barg)',
        'Design temp. (°C)',
        'Test pack',
        'Test pressure (barg)',
        'Criticality',
        'Work scope',
        'Planned date',
        'Crew',
        'Equipment',
        'Viewed from',
        'Bolt 1 at',
        'Remarks',
      ]),
    ).toEqual([...REGISTER_FIELDS]);
  });
  it('knows other wordings of the trade', () => {
    expect(
      fieldsOf([
        'Flange Tag',
        'Unit',
        'ISO',
        'NB',
        'Class',
        'Face',
        'Stud Qty',
        'Stud Dia',
        'Stud Lg',
        'Stud Matl',
        'Gskt type',
        'Fluid',
        'DP [psig]',
        'DT [°F]',
        'TP No',
        'Hydrotest press.',
        'Crit.',
        'Activity',
        'Due date',
        'Contractor',
        'Comments',
      ]),
    ).toEqual([
      'tag',
      'area',
      'drawing',
      'size',
      'rating',
      'facing',
      'boltCount',
      'boltThread',
      'boltLength',
      'boltGrade',
      'gasketFamily',
      'medium',
      'designPressure',
      'designTemperature',
      'testPack',
      'testPressure',
      'criticality',
      'workScope',
      'plannedDate',
      'crew',
      'remark',
    ]);
  });
  it('leaves a column alone that nothing fits', () => {
    const guess = guessColumns(['Tag', 'Paint colour'], [['J-1', 'red']]);
    expect(guess.columns[1]).toEqual({ column: 1, header: 'Paint colour', field: 'ignored', confidence: 0 });
    expect(guess.mapping).toEqual({ tag: 0 });
  });
  it('trusts cells less where they contradict the header, and knows marked cells without a header', () => {
    const rows = [
      ['J-1', 'north', 'DN 50', 'PN 16'],
      ['J-2', 'south', 'DN 80', 'PN 16'],
      ['J-3', 'east', 'DN 100', 'PN 40'],
    ];
    const guess = guessColumns(['Tag', 'Size', '', ''], rows);
    expect(guess.mapping).toMatchObject({ tag: 0, size: 2, rating: 3 });
    const agreed = guessColumns(['Tag', 'Size'], [['J-1', '8"']]).columns[1]!;
    const contradicted = guessColumns(['Tag', 'Size'], [['J-1', 'north']]).columns[1]!;
    expect(agreed.confidence).toBeGreaterThan(contradicted.confidence);
  });
  it('gives each field to one column only', () => {
    const guess = guessColumns(['Tag', 'Size', 'Size'], [['J-1', '8"', '6"']]);
    expect(guess.columns.map((column) => column.field)).toEqual(['tag', 'size', 'ignored']);
  });
  it('a running number is no tag where there is one, and may be one where there is none', () => {
    expect(fieldsOf(['No.', 'Tag No.', 'Size'], [[1, 'J-1', '8"']])).toEqual(['ignored', 'tag', 'size']);
    expect(fieldsOf(['No.', 'Size'], [['J-1', '8"']])).toEqual(['tag', 'size']);
  });
  it('names columns as sheets do', () =>
    expect([0, 25, 26, 51, 701, 702].map(columnLetter)).toEqual(['A', 'Z', 'AA', 'AZ', 'ZZ', 'AAA']));
});

describe('finding the header row', () => {
  const title = [['Ostmark works'], ['Flange register, revision 3', null, null], []];
  const header = ['Tag', 'Size', 'Rating', 'Design pressure', 'Design temperature'];
  it('below title lines', () => {
    expect(findHeaderRow([...title, header, ['J-1', '8"', '150', 10, 50]])).toEqual({
      index: 3,
      headers: header,
      firstDataIndex: 4,
    });
  });
  it('takes a row of units below it in', () => {
    const found = findHeaderRow([...title, header, ['', '', '', 'barg', '°C'], ['J-1', '8"', '150', 10, 50]]);
    expect(found).toMatchObject({
      firstDataIndex: 5,
      headers: ['Tag', 'Size', 'Rating', 'Design pressure (barg)', 'Design temperature (°C)'],
    });
  });
  it('finds none where no row names two fields, and takes the one pointed at', () => {
    const rows = [
      ['one', 'two'],
      ['J-1', '8"'],
    ];
    expect(findHeaderRow(rows)).toBeUndefined();
    expect(headerRowAt(rows, 0)).toEqual({ index: 0, headers: ['one', 'two'], firstDataIndex: 1 });
  });
});
