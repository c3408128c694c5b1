import type { TargetEvidence } from '@seatwell/workflow';
import { describe, expect, test } from 'vitest';
import { makeOf, procedureOf, sourceOf, targetOf } from '../../../../../../tests/api/support/sample-sheet.ts';
import { offeredLanguages } from '../texts/sheet-texts.ts';
import { sheetContent } from './sheet-content.ts';

const sheetOf = (target: TargetEvidence, language: (typeof offeredLanguages)[number] = 'en') =>
  sheetContent(sourceOf({ make: makeOf({ target }) }), language);
const rowsOf = (target: TargetEvidence, language?: (typeof offeredLanguages)[number]) =>
  new Map(sheetOf(target, language).target?.rows.map(({ label, value }) => [label, value]));

describe('what a sheet says of the limits of its target', () => {
  test('names what is not checked, with what is missing', () => {
    const rows = rowsOf(
      targetOf(400, { notChecked: [{ limit: 'flange-rotation', missing: ['gasket-rotation-limit'] }] }),
    );
    expect(rows.get('Not checked')).toBe('flange rotation (missing: rotation that the gasket bears (gasket data))');
    expect(rowsOf(targetOf(400)).has('Not checked')).toBe(false);
    const two = rowsOf(
      targetOf(400, {
        notChecked: [
          { limit: 'flange-strength', missing: ['flange-strength-data'] },
          { limit: 'flange-rotation', missing: ['gasket-rotation-limit', 'flange-strength-data'] },
        ],
      }),
    ).get('Not checked');
    expect(two).toMatch(/^flange strength · flange rotation \(missing: /);
    expect(two?.match(/allowable stresses/g)).toHaveLength(1);
  });

  test('names coating and washers beside grade and condition, where the procedure does', () => {
    const bolts = { coating: 'nickel-zinc', washersPerBolt: 1 } as const;
    expect(rowsOf(targetOf(400, { bolts })).get('Assumes')).toContain('coated: nickel-zinc · one washer a bolt');
    expect(rowsOf(targetOf(400)).get('Assumes')).not.toContain('washer');
  });

  test.each(['bolt-thermal-gain', 'flange-rotation', 'flange-stress-assembly'])('governed by %s has words', (name) => {
    for (const language of offeredLanguages)
      expect([...rowsOf(targetOf(400, { governedBy: name }), language).values()]).not.toContain(name);
  });
});

describe('the sheet of a joint whose bolts are stretched', () => {
  const target: TargetEvidence = {
    ...targetOf(0),
    torque_Nm: null,
    elongation: { elongation_mm: 0.1302, effectiveLength_mm: 106.4, elasticModulus_MPa: 204_000 },
    passes: [
      { percent: 50, torque_Nm: null, pressure_MPa: null, elongation_mm: 0.0651 },
      { percent: 100, torque_Nm: null, pressure_MPa: null, elongation_mm: 0.1302 },
    ],
  };
  const procedure = {
    code: 'BP-EL',
    title: 'Elongation',
    revision: 1,
    approved: true,
    superseded: false,
    content: procedureOf({ method: 'elongation', passPercents: [50, 100] }),
  };
  const content = sheetContent(sourceOf({ make: makeOf({ target }), procedure }));

  test('has the elongation of each pass, in mm and in', () => {
    expect(content.setUnits).toEqual(['mm', 'in']);
    expect(content.passes.map(({ name, torque_Nm, torque_ftlbf }) => [name, torque_Nm, torque_ftlbf])).toEqual([
      ['1', '0.0651', '0.00256'],
      ['2', '0.13', '0.00513'],
      ['Final round', '0.13', '0.00513'],
    ]);
    expect(content.target?.rows.find(({ label }) => label === 'Elongation')?.value).toBe(
      '0.13 mm (0.00513 in) over 106 mm between mid-nuts, modulus 204 GPa',
    );
  });

  test('has torques in their units where nothing is stretched', () => {
    expect(sheetContent(sourceOf()).setUnits).toEqual(['N·m', 'ft·lbf']);
  });
});
