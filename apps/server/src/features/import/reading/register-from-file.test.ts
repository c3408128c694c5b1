import {
  type Cell,
  findHeaderRow,
  guessColumns,
  type RegisterOptions,
  type RegisterReading,
  readRegisterRows,
} from '@seatwell/workflow';
import { describe, expect, it } from 'vitest';
import { sampleRegister } from '../../../../../../tests/browser/support/sample-register.ts';
import { sampleRegisterCsv, sampleRows } from '../sample-register.ts';
import { lookupFlange } from './flange-lookup.ts';
import { readSheet } from './read-file.ts';

/** From the bytes of a file to the joints, as the import does it: sheet, header, columns, rows. */
async function readRegister(bytes: Uint8Array, sheet: string, options: RegisterOptions = {}) {
  const reading = await readSheet({ name: sheet, bytes }, sheet);
  if (!reading.ok) throw new Error(reading.error.message);
  const cells: (readonly Cell[])[] = reading.rows.map((row) => row.cells);
  const header = findHeaderRow(cells);
  if (header === undefined) throw new Error('no header row found');
  const rows = reading.rows.slice(header.firstDataIndex);
  const guessed = guessColumns(
    header.headers,
    rows.map((row) => row.cells),
  );
  const register = readRegisterRows({ rows, mapping: guessed.mapping, headers: header.headers, options, lookupFlange });
  return { headerRow: reading.rows[header.index]!.rowNumber, guessed, register };
}

const problemsOf = (register: RegisterReading) =>
  register.rows.flatMap((row) =>
    row.problems.map(({ column, severity, code }) => ({ rowNumber: row.rowNumber, column, severity, code })),
  );

describe('the sample offered for download', () => {
  it('is read without an error, a question or a column left over', async () => {
    const { guessed, register } = await readRegister(Buffer.from(sampleRegisterCsv()), 'sample.csv');
    expect(guessed.columns.filter((column) => column.field === 'ignored')).toEqual([]);
    expect(problemsOf(register)).toEqual([]);
    expect(register.questions).toEqual([]);
    expect(register.duplicates).toEqual([]);
    expect(register.rows).toHaveLength(sampleRows.length);
  });
  it('has its bolts filled from the standards', async () => {
    const { register } = await readRegister(Buffer.from(sampleRegisterCsv()), 'sample.csv');
    const pump = register.rows[1]!;
    expect(pump.filled).toEqual(expect.arrayContaining(['boltCount', 'boltThread']));
    // ASME B16.5-2020, NPS 8 class 150: eight bolts of 3/4 in (from memory of the standard).
    expect(pump.values).toMatchObject({ boltCount: 8, boltThread: '3/4-10 UNC' });
  });
});

describe('a register as a plant hands it over', () => {
  it('every planted error is found at its cell, and nothing else is blamed', async () => {
    const sample = await sampleRegister();
    const { headerRow, register } = await readRegister(sample.bytes, sample.sheet);
    expect(headerRow).toBe(sample.headerRow);
    expect(register.rows).toHaveLength(sample.jointCount);
    expect(register.duplicates).toEqual(sample.duplicates);
    const byCell = (a: { rowNumber: number }, b: { rowNumber: number }) => a.rowNumber - b.rowNumber;
    expect(problemsOf(register).sort(byCell)).toEqual(
      sample.planted
        .map(({ rowNumber, column, severity, code }) => ({ rowNumber, column, severity, code }))
        .sort(byCell),
    );
  });
  it('asks what only a person can say, and is complete once answered', async () => {
    const sample = await sampleRegister({ corrected: true });
    const asked = await readRegister(sample.bytes, sample.sheet);
    expect(asked.register.questions.map((question) => question.key).sort()).toEqual([...sample.questions].sort());
    const answers = {
      'all.gasketCount.insert': 2,
      'all.boltCount.EN-1092-1.DN65': 4,
      'word.criticality.high': 'A',
      'word.workScope.re torque': 'retighten-ambient',
    };
    const { register } = await readRegister(sample.bytes, sample.sheet, { answers });
    expect(register.questions).toEqual([]);
    expect(problemsOf(register)).toEqual([]);
  });
});
