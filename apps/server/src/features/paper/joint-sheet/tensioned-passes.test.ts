import type { Tensioning } from '@seatwell/workflow';
import { describe, expect, test } from 'vitest';
import { makeOf, procedureOf, sourceOf, targetOf } from '../../../../../../tests/api/support/sample-sheet.ts';
import { sheetContent } from './sheet-content.ts';

const tensioning: Tensioning = {
  toolId: '00000000-0000-7000-8000-000000000021',
  toolTag: 'TN-1',
  hydraulicArea_mm2: 1500,
  gaugeDivision_MPa: 0.5,
  coverage: 0.5,
  residualLoad_N: 100_000,
  loadTransferFactor: 1.23,
  toolLoad_N: 123_000,
  utilisation: 0.72,
  protrusion_mm: 22.2,
  groups: [
    [1, 3, 5, 7, 9, 11],
    [2, 4, 6, 8, 10, 12],
  ],
  passes: [{ percent: 100, groupPressures_MPa: [95.5, 82] }],
  warnings: [],
};
const target = {
  ...targetOf(0, { tensioning }),
  torque_Nm: null,
  passes: [{ percent: 100, torque_Nm: null, pressure_MPa: 82 }],
};
const procedure = {
  code: 'BP-TN',
  title: 'Tensioner, half the bolts',
  revision: 1,
  approved: true,
  superseded: false,
  content: procedureOf({ method: 'tensioner', coverage: 0.5, passPercents: [100] }),
};
const content = sheetContent(sourceOf({ make: makeOf({ target }), procedure }));

describe('the sheet of a tensioned joint', () => {
  test('has a row for each group with its pressure, and the last pressure for the check pass', () => {
    expect(content.passes.map(({ name, torque_Nm, pump }) => [name, torque_Nm, pump.split(' / ')[0]])).toEqual([
      ['1 A', '–', '955 bar'],
      ['1 B', '–', '820 bar'],
      ['Final round', '–', '820 bar'],
    ]);
    expect(content.showsPump).toBe(true);
  });

  test('names the bolts of each group', () => {
    expect(content.sequence.lines.map(({ heading, fours }) => [heading, fours.join(' ')]).slice(0, 2)).toEqual([
      ['Group A', '1 3 5 7 9 11'],
      ['Group B', '2 4 6 8 10 12'],
    ]);
  });

  test('says for which tool, how, and what to look at before pressure goes on', () => {
    const notes = content.passNotes.join(' ');
    expect(notes).toContain('TN-1, 1500 mm²');
    expect(notes).toContain('line of fire');
    expect(notes).toContain('22.2 mm (common practice)');
    expect(notes).not.toContain('write it in');
  });

  test('prints no pressure where the joint is voided', () => {
    const source = sourceOf({ make: makeOf({ target }), procedure });
    const held = sheetContent({
      ...source,
      joint: { ...source.joint, voided: { why: 'not-opened', reason: 'out of scope' } as never },
    });
    expect(held.valid).toBe(false);
    expect(JSON.stringify(held.passes)).not.toContain('bar');
  });
});
