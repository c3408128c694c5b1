import { findFlange, targetWindow } from '@seatwell/calc';
import { describe, expect, test } from 'vitest';
import { parseSearch, writeSearch } from '../../app/search-params.ts';
import { calculate, inputOf, isRefused, sensitivitiesOf, studsOf } from './answer.ts';
import { example } from './example.ts';
import { asInput, type Inputs, readChart, readInputs, readPasses, withInputs, writeChart } from './inputs.ts';
import { missingInputs } from './missing-inputs.ts';
import { targetRequest } from './request.ts';

const torqueOf = (inputs: Inputs) => {
  const { target } = calculate(inputs);
  if (target === undefined || isRefused(target)) throw new Error('no target');
  return target.tool.torque_Nm;
};

describe('the link of a calculation', () => {
  test('opens the same inputs again', () => {
    const chart = writeChart([
      { pressure_MPa: 10, torque_Nm: 420.5 },
      { pressure_MPa: 69, torque_Nm: 2900 },
    ]);
    const inputs = withInputs(example, {
      pairs: chart,
      method: 'hydraulic-wrench',
      gasketSource: 'Maker’s sheet 12 & 13',
    });
    expect(readInputs(parseSearch(writeSearch(inputs)))).toEqual(inputs);
  });

  test('leaves out what is no input, and inputs taken away', () => {
    expect(readInputs({ size: 'NPS8', colour: 'blue' })).toEqual({ size: 'NPS8' });
    expect(withInputs<Inputs>({ size: 'NPS8', rating: '150' }, { rating: '' })).toEqual({ size: 'NPS8' });
  });

  test('a pressure of 150 psi comes back as 150 psi', () => {
    const psi_MPa = 0.00689475729316836;
    expect(Number((Number(asInput(150 * psi_MPa)) / psi_MPa).toPrecision(9))).toBe(150);
  });

  test('charts and passes are read, what is no pair is left out', () => {
    expect(readChart('10:400 20: x:3')).toEqual([{ pressure_MPa: 10, torque_Nm: 400 }]);
    expect(readPasses('30, 70;100')).toEqual([30, 70, 100]);
  });
});

describe('what is missing', () => {
  test('nothing is assumed: an empty screen names every input that a target needs', () => {
    expect(missingInputs({})).toEqual(
      expect.arrayContaining(['standard', 'size', 'nutFactor', 'lubricantSource', 'gasketSource', 'maximum_MPa']),
    );
    expect(calculate({}).target).toBeUndefined();
  });

  test('the contact of a standard gasket is taken from its table, of another it must be entered', () => {
    expect(missingInputs(example)).toEqual([]);
    expect(missingInputs(withInputs(example, { family: 'jacketed' }))).toEqual([
      'contactInside_mm',
      'contactOutside_mm',
    ]);
  });

  test('a sequence needs the count of bolts only', () => {
    const { sequence } = calculate({ standard: 'ASME-B16.5', size: 'NPS8', rating: '150' });
    expect(sequence).toMatchObject({ order: [[1], [5], [3], [7], [2], [6], [4], [8]] });
  });
});

describe('limits that need more inputs', () => {
  const names = (inputs: Inputs) => {
    const { target } = calculate(inputs);
    if (target === undefined || isRefused(target)) throw new Error('no target');
    return [...target.window.lower, ...target.window.upper].map(({ name }) => name);
  };
  const strength: Inputs = {
    strengthKind: 'integral',
    allowableAmbient_MPa: '138',
    allowableOperating_MPa: '120',
    modulusAmbient_MPa: '200000',
    modulusOperating_MPa: '190000',
    strengthSource: 'code',
  };
  const warm: Inputs = {
    assembly_C: '20',
    startBolt_C: '150',
    startFlange_C: '190',
    boltExpansion_ppmK: '12',
    flangeExpansion_ppmK: '12',
    expansionSource: 'handbook',
    grip_mm: '88.6',
    elasticModulus_MPa: '205000',
  };

  test('the strength of the flange, and its rotation from it', () => {
    const inputs = withInputs(example, { ...strength, rotationLimit_deg: '0.3', rotationSource: 'maker' });
    expect(names(inputs)).toEqual(
      expect.arrayContaining(['flange-stress-assembly', 'flange-stress-test', 'flange-rigidity', 'flange-rotation']),
    );
  });

  test('name all that belongs to them as soon as the first is entered', () => {
    expect(missingInputs(withInputs(example, { strengthKind: 'loose' }))).toContain('allowableAmbient_MPa');
    expect(missingInputs(withInputs(example, { startBolt_C: '90' }))).toEqual(
      expect.arrayContaining(['assembly_C', 'startFlange_C', 'expansionSource', 'grip_mm', 'elasticModulus_MPa']),
    );
    expect(missingInputs(withInputs(example, { rotationLimit_deg: '0.3' }))).toEqual(['rotationSource']);
    expect(missingInputs(withInputs(example, { coatingMaximum_C: '260' }))).toEqual(['coating', 'coatingSource']);
  });

  test('a temperature difference, in millionths to the kelvin and kilonewtons to the millimetre', () => {
    expect(names(withInputs(example, warm))).toContain('bolt-thermal-gain');
    const request = targetRequest(
      withInputs(example, {
        ...warm,
        flangeStiffness_kNmm: '8000',
        gasketStiffness_kNmm: '2000',
        stiffnessSource: 'model',
      }),
    );
    expect(request.service.thermal).toMatchObject({
      boltExpansion_perK: 12e-6,
      stiffness: { flanges_N_per_mm: 8e6, gaskets_N_per_mm: 2e6 },
    });
  });

  test('a ring takes its contact from what was entered', () => {
    const ring = withInputs(example, { family: 'ring-joint' });
    expect(missingInputs(ring)).toEqual(['ringPitch_mm', 'ringWidth_mm', 'ringSource']);
    const { gasket } = targetRequest(
      withInputs(ring, { ringPitch_mm: '269.88', ringWidth_mm: '11.11', ringSource: 'drawing' }),
    );
    expect(gasket.contactInside_mm).toBeCloseTo(258.77, 6);
  });

  test('ribs, washers, nut and coating reach the calculation', () => {
    const { gasket, bolting } = targetRequest(
      withInputs(example, {
        ribArea_mm2: '900',
        washersPerBolt: '2',
        washerThickness_mm: '4',
        nut: '2H',
        coating: 'zinc',
      }),
    );
    expect(gasket.ribArea_mm2).toBe(900);
    expect(bolting).toMatchObject({ washers: { perBolt: 2, thickness_mm: 4 }, nut: '2H', coating: 'zinc' });
    const wrong = calculate(withInputs(example, { grade: 'B7M', nut: '2H' })).target;
    if (wrong === undefined || !isRefused(wrong)) throw new Error('not refused');
    expect(wrong.refused.map((item) => inputOf(item))).toEqual(['nut']);
  });

  test('the studs hold nuts and washers beside the clamped length', () => {
    expect(studsOf(example)).toBeUndefined();
    const grip = { grip_mm: '88.6' };
    // 88.6 + 2 · 0.885 in of nut = 133.6 mm, 5 1/4 in; with two washers of 4.5 mm 142.6 mm, nearest 5 1/2 in.
    expect(studsOf(withInputs(example, grip))?.length_mm).toBeCloseTo(5.25 * 25.4, 9);
    const washered = studsOf(withInputs(example, { ...grip, washersPerBolt: '2' }));
    expect(washered?.length_mm).toBeCloseTo(5.5 * 25.4, 9);
    expect(washered).toMatchObject({ count: 12, thread: '7/8-9 UNC' });
  });

  test('what the window depends on is asked for apart', () => {
    const found = sensitivitiesOf(example);
    if (isRefused(found)) throw new Error('refused');
    expect(found.find(({ input }) => input === 'friction')?.torque_percent).toBeCloseTo(10, 6);
  });
});

describe('the answer', () => {
  test('is that of the calculation for the same request', () => {
    const answer = targetWindow(targetRequest(example));
    expect(torqueOf(example)).toBe(answer.tool.torque_Nm);
    expect(answer.tool.torque_Nm).toBeGreaterThan(0);
  });

  test('torque is proportional to the nut factor while the gasket governs', () => {
    const lower = withInputs(example, { nutFactor: '0.12' });
    const higher = withInputs(example, { nutFactor: '0.18' });
    expect((torqueOf(higher) ?? 0) / (torqueOf(lower) ?? 1)).toBeCloseTo(1.5, 9);
  });

  test('an impossible input is refused and named', () => {
    const { target } = calculate(withInputs(example, { maximum_MPa: '20' }));
    if (target === undefined || !isRefused(target)) throw new Error('not refused');
    expect(target.refused.map((item) => inputOf(item))).toEqual(['maximum_MPa']);
  });

  test('EN DN 65 PN 16 asks for the count of bolts', () => {
    const dn65 = withInputs(example, { standard: 'EN-1092-1', size: 'DN65', rating: 'PN16' });
    expect(() => findFlange({ standard: 'EN-1092-1', size: 'DN65', rating: 'PN16' })).toThrow();
    const { sequence } = calculate(withInputs(dn65, { boltCount: '8' }));
    expect(sequence).toMatchObject({ positions: { length: 8 } });
  });
});
