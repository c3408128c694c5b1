import type { TighteningPlan } from '@seatwell/workflow';
import { describe, expect, test } from 'vitest';
import { makeOf, sourceOf, targetOf } from '../../../../../../tests/api/support/sample-sheet.ts';
import { sheetContent } from './sheet-content.ts';

const tightening: TighteningPlan = {
  way: 'computed-loads',
  toolDivision_Nm: 10,
  cap_percent: 138,
  capGovernedBy: 'bolt-yield',
  passes: [
    {
      level_percent: 91.7,
      setValues_Nm: [400, 520],
      steps: Array.from({ length: 12 }, (_, index) => ({ bolt: index + 1, setValue: index < 7 ? 1 : 0 })),
    },
  ],
  final: { min: 96, mean: 99, max: 103 },
  band: { min: 87.6, max: 112.3 },
  tilt_mm: 1.2,
  usualTilt_mm: 0.6,
  moves: 12,
  movesSaved: 48,
  passesSaved: 4,
};
const make = makeOf({ target: targetOf(430, { tightening }) });

describe('a joint with computed loads', () => {
  const content = sheetContent(sourceOf({ make }));

  test('has a row for each set value, the highest first, and the full value for the rounds after', () => {
    expect(content.passes.map(({ name, percent, torque_Nm }) => [name, percent, torque_Nm])).toEqual([
      ['1', '92', '520'],
      ['1', '92', '400'],
      ['Final round', '100', '430'],
    ]);
  });

  test('names the value of each bolt in the order, a line for each turn of the dial', () => {
    expect(content.sequence.lines.map(({ heading, fours }) => [heading, fours.join(' / ')])).toEqual([
      ['Pass 1: 520 N·m', '1 2 3 4 / 5 6 7'],
      ['Pass 1: 400 N·m', '8 9 10 11 / 12'],
      ['Final round', 'clockwise from bolt 1: 1 2 3 … 12'],
    ]);
  });

  test('says the band and that it is no certificate', () => {
    expect(content.passNotes[0]).toContain('138 % of target');
    expect(content.passNotes[0]).toContain('88 to 112 %');
    expect(content.passNotes[0]).toContain('a measured load overrides it');
  });

  test('prints none of the values where the target is out of date', () => {
    const flags = [{ code: 'target-out-of-date', detail: null }] as never;
    const stale = sheetContent(sourceOf({ make, flags }));
    expect(JSON.stringify(stale)).not.toMatch(/520|400 N/);
    expect(stale.passes.every(({ torque_Nm }) => torque_Nm === '–')).toBe(true);
  });
});
