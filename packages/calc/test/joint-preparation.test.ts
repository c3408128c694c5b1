import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { findFlange, listFlangeRatings, listFlangeSizes } from '../src/flanges/find-flange.ts';
import {
  alignmentLimits,
  blindThickness,
  CalcRefusal,
  celsiusOf,
  convert,
  elongation,
  faceLimits,
  fahrenheitOf,
  GASKET_FAMILIES,
  gasketDimensions,
  gasketFactors,
  hydraulicPressure,
  judgeAlignment,
  judgeImperfection,
  kitList,
  loadFromElongation,
  pressureRating,
  ratingCheck,
  SHAFT_MOVEMENT_LIMIT_MM,
  standardStudLength,
  studLength,
  targetTable,
  turnOfNut,
  UNITS,
  weldNeckHub,
} from '../src/index.ts';
import { EXAMPLE_TARGET } from './example-joints.ts';

describe('faces', () => {
  it('allow a soft gasket more than a hard one (PCC-1 appendix D, from memory)', () => {
    const soft = faceLimits({ gasketFamily: 'spiral-wound', seatingWidth_mm: 20 });
    const hard = faceLimits({ gasketFamily: 'fibre-sheet', seatingWidth_mm: 20 });
    expect([soft.gasket, soft.flatness_mm, hard.gasket, hard.flatness_mm]).toEqual(['soft', 0.25, 'hard', 0.15]);
    expect(soft.imperfections.map(({ depth_mm }) => depth_mm)).toEqual([1.27, 0.76, 0.13, 0]);
    expect(hard.imperfections.map(({ depth_mm }) => depth_mm)).toEqual([0.76, 0.25, 0, 0]);
  });

  it('take a gasket for soft when it compresses more than 1.0 mm at assembly', () => {
    const of = (gasketCompression_mm: number) =>
      faceLimits({ gasketFamily: 'jacketed', seatingWidth_mm: 20, gasketCompression_mm }).gasket;
    expect([of(1), of(1.005), of(1.5)]).toEqual(['hard', 'soft', 'soft']);
  });

  it('divide the seating width into quarters', () => {
    const { imperfections } = faceLimits({ gasketFamily: 'jacketed', seatingWidth_mm: 20 });
    expect(imperfections.map(({ reachUpTo_mm }) => reachUpTo_mm)).toEqual([5, 10, 15, 20]);
  });

  it('judge a scratch by how far it reaches across the seating width', () => {
    const limits = faceLimits({ gasketFamily: 'spiral-wound', seatingWidth_mm: 20 });
    expect(judgeImperfection(limits, { reach_mm: 5, depth_mm: 1.2 })).toMatchObject({ accepted: true, limit_mm: 1.27 });
    expect(judgeImperfection(limits, { reach_mm: 9, depth_mm: 1.2 })).toMatchObject({
      accepted: false,
      limit_mm: 0.76,
    });
    expect(judgeImperfection(limits, { reach_mm: 19, depth_mm: 0.05 }).accepted).toBe(false);
    expect(judgeImperfection(limits, { reach_mm: 30, depth_mm: 0.01 }).accepted).toBe(false);
  });
});

describe('alignment', () => {
  it('has the limits of its sources', () => {
    const limits = (request: Parameters<typeof alignmentLimits>[0]) =>
      Object.fromEntries(alignmentLimits(request).map(({ name, limit }) => [name, limit]));
    // ASME PCC-1 appendix E (read).
    expect(limits({ joint: 'piping', outsideDiameter_mm: 345, gasketThickness_mm: 4.5 })).toEqual({
      offset: 1.5,
      parallelism: 0.8,
      rotation: 3,
      'pull-in-force': 10,
      gap: 9,
    });
    // API 686 (from memory): holes 1.5 mm, faces 0.01 mm per cm, shaft 0.05 mm.
    expect(limits({ joint: 'machine-nozzle', outsideDiameter_mm: 500 })).toEqual({
      offset: 1.5,
      rotation: 1.5,
      'shaft-movement': 0.05,
      parallelism: 0.5,
    });
    expect(SHAFT_MOVEMENT_LIMIT_MM).toBe(0.05);
  });

  it('judges a piping joint by PCC-1 appendix E', () => {
    const limits = alignmentLimits({ joint: 'piping', outsideDiameter_mm: 345, gasketThickness_mm: 4.5 });
    expect(judgeAlignment(limits, { name: 'offset', value: 1.5 }).accepted).toBe(true);
    expect(judgeAlignment(limits, { name: 'parallelism', value: 0.9 }).accepted).toBe(false);
    expect(judgeAlignment(limits, { name: 'gap', value: 9 }).accepted).toBe(true);
    expect(judgeAlignment(limits, { name: 'pull-in-force', value: 12 }).accepted).toBe(false);
  });

  it('is tighter at a machine nozzle (API 686, from memory)', () => {
    const limits = alignmentLimits({ joint: 'machine-nozzle', outsideDiameter_mm: 345 });
    expect(limits.find(({ name }) => name === 'parallelism')?.limit).toBeCloseTo(0.345, 9);
    expect(() => judgeAlignment(limits, { name: 'gap', value: 1 })).toThrow(/no limit for gap/);
  });

  it('follows the construction code when asked (B31.3 335.1.1, from memory)', () => {
    const limits = alignmentLimits({ joint: 'piping', outsideDiameter_mm: 400, basis: 'B31.3' });
    expect(limits.map(({ name, limit }) => [name, limit])).toEqual([
      ['offset', 3],
      ['parallelism', 2],
    ]);
  });
});

describe('the stud of the annex', () => {
  // ASME B16.5 annex C (from memory): L = 2·(tf + t + d) + G + F + n; n 0.06 up to 12 in, 0.12 up to 18 in, then 0.25.
  it.each([
    ['NPS2', '150', 5 / 8, 0.12, 0.06],
    ['NPS12', '2500', 2.75, 0.5, 0.25],
  ])('%s class %s', (size, rating, diameter_in, faces_in, tolerance_in) => {
    const key = { standard: 'ASME-B16.5', size, rating };
    const flange_in = findFlange(key).thickness_mm / 25.4 + 0.12;
    const exact_in = 2 * (flange_in + diameter_in) + 0.12 + faces_in + tolerance_in;
    expect(standardStudLength(key).exactLength_in).toBeCloseTo(exact_in, 9);
  });
});

describe('pressure and temperature rating', () => {
  const key = { standard: 'ASME-B16.5', rating: '150', materialGroup: '1.1' };
  it('goes straight between the temperatures of the table', () => {
    const at = (temperature_C: number) => {
      const answer = pressureRating({ ...key, temperature_C });
      return answer.known ? answer.allowed_MPa : Number.NaN;
    };
    expect(at(38)).toBeCloseTo(1.96, 9);
    expect(at(-29)).toBeCloseTo(1.96, 9);
    expect(at(75)).toBeCloseTo((1.92 + 1.77) / 2, 9);
    expect(at(538)).toBeCloseTo(0.14, 9);
  });

  it('says so when it is not held, and never blocks', () => {
    expect(ratingCheck({ ...key, materialGroup: '1.9', temperature_C: 50, pressure_MPa: 1 }).accepted).toBeUndefined();
    expect(pressureRating({ ...key, standard: 'EN-1092-1', rating: 'PN16', temperature_C: 50 }).known).toBe(false);
    expect(ratingCheck({ ...key, temperature_C: 200, pressure_MPa: 1.5 }).accepted).toBe(false);
  });

  it('is refused outside the temperatures of the table', () => {
    expect(() => pressureRating({ ...key, temperature_C: 600 })).toThrow(/outside the table/);
    expect(() => pressureRating({ ...key, temperature_C: -50 })).toThrow(/outside the table/);
  });
});

describe('gaskets', () => {
  it('have dimensions that lie inside the bolts', () => {
    for (const size of listFlangeSizes('ASME-B16.5')) {
      for (const rating of listFlangeRatings('ASME-B16.5', size)) {
        if (size === 'NPS22') continue;
        const key = { standard: 'ASME-B16.5', size, rating };
        const gasket = gasketDimensions({ ...key, family: 'spiral-wound' });
        const flange = findFlange(key);
        expect(gasket.contactInside_mm).toBeLessThan(gasket.contactOutside_mm);
        expect(gasket.contactOutside_mm).toBeLessThan(flange.boltCircle_mm - flange.boltHole_mm);
      }
    }
  });

  it('have no invented dimensions or factors', () => {
    const key = { standard: 'ASME-B16.5', size: 'NPS8', rating: '150' };
    expect(() => gasketDimensions({ ...key, family: 'grooved-metal' })).toThrow(CalcRefusal);
    expect(gasketFactors('ptfe-sheet')).toEqual([]);
    expect(gasketFactors('spiral-wound').map(({ m }) => m)).toEqual([2.5, 3]);
  });

  it('of fibre are never retightened hot; of PTFE only cold', () => {
    const rule = (code: string) => GASKET_FAMILIES.find((family) => family.code === code)?.retightening;
    expect(rule('fibre-sheet')).toBe('never-after-hot');
    expect(rule('ptfe-sheet')).toBe('cold-only');
    expect(rule('spiral-wound')).toBe('in-site-window');
  });
});

describe('hydraulic wrench', () => {
  const wrench = {
    pairs: [
      { pressure_MPa: 10, torque_Nm: 500 },
      { pressure_MPa: 70, torque_Nm: 3500 },
    ],
    gaugeDivision_MPa: 2,
  };

  it('rounds to the gauge and says which torque results', () => {
    const { pressure_MPa, resultingTorque_Nm } = hydraulicPressure({ torque_Nm: 1040, ...wrench });
    expect(pressure_MPa).toBe(20);
    expect(resultingTorque_Nm).toBeCloseTo(1000, 9);
  });

  it('warns when the gauge changes the torque by more than 3 %', () => {
    const codes = (torque_Nm: number) => hydraulicPressure({ torque_Nm, ...wrench }).warnings.map(({ code }) => code);
    expect(codes(1025)).toEqual([]);
    expect(codes(1029)).toEqual([]);
    expect(codes(1035)).toEqual(['gauge-coarse']);
  });

  it('stays on the chart and within half a division', () => {
    fc.assert(
      fc.property(fc.double({ min: 500, max: 3500, noNaN: true }), (torque_Nm) => {
        const { pressure_MPa, resultingTorque_Nm } = hydraulicPressure({ torque_Nm, ...wrench });
        expect(pressure_MPa % 2).toBe(0);
        expect(Math.abs(resultingTorque_Nm - torque_Nm)).toBeLessThanOrEqual(50 + 1e-6);
      }),
    );
  });

  it('is never extrapolated', () => {
    expect(() => hydraulicPressure({ torque_Nm: 4000, ...wrench })).toThrow(/outside the tool/);
    expect(() => hydraulicPressure({ torque_Nm: 400, ...wrench })).toThrow(/outside the tool/);
    expect(() => hydraulicPressure({ torque_Nm: 600, ...wrench, pairs: wrench.pairs.slice(0, 1) })).toThrow(
      /two pairs/,
    );
    expect(() => hydraulicPressure({ torque_Nm: 600, ...wrench, pairs: wrench.pairs.toReversed() })).toThrow(/rising/);
  });
});

describe('stretch', () => {
  it('and load invert each other', () => {
    const bolt = { thread: 'M30', effectiveLength_mm: 250, elasticModulus_MPa: 207_000, shankLength_mm: 60 };
    const { elongation_mm } = elongation({ ...bolt, load_N: 2e5 });
    expect(loadFromElongation({ ...bolt, elongation_mm }).load_N).toBeCloseTo(2e5, 6);
  });

  it('turns the nut by its pitch', () => {
    expect(turnOfNut({ thread: 'M30', elongation_mm: 0.5, jointCompression_mm: 1.25 }).turn_deg).toBeCloseTo(180, 9);
  });
});

describe('studs and kits', () => {
  it('follow the annex rule for at least 129 of the 136 printed lengths; the others are printed longer', () => {
    const off = listFlangeSizes('ASME-B16.5').flatMap((size) =>
      listFlangeRatings('ASME-B16.5', size).flatMap((rating) => {
        const key = { standard: 'ASME-B16.5', size, rating };
        const printed_mm = findFlange(key).studLength_mm ?? Number.NaN;
        const { length_mm } = standardStudLength(key);
        return length_mm === printed_mm ? [] : [printed_mm - length_mm];
      }),
    );
    expect(off.length).toBeLessThanOrEqual(7);
    for (const difference_mm of off) expect([5, 10]).toContain(difference_mm);
  });

  it('list what the store packs for an insert joint: two gaskets', () => {
    const parts = [
      { kind: 'flange', thickness_mm: 28.6 },
      { kind: 'gasket', thickness_mm: 3.2 },
      { kind: 'insert', thickness_mm: 12 },
      { kind: 'gasket', thickness_mm: 3.2 },
      { kind: 'flange', thickness_mm: 28.6 },
    ];
    const kit = kitList({
      thread: '3/4-10 UNC',
      boltCount: 8,
      grade: 'A193 B7',
      nut: 'A194 2H',
      gasketDescription: 'spiral wound, NPS 8 class 150',
      clampedParts: parts,
    });
    expect(kit.map(({ item, quantity }) => [item, quantity])).toEqual([
      ['gasket', 2],
      ['stud', 8],
      ['nut', 16],
      ['socket', 1],
    ]);
    const { effectiveLength_mm, grip_mm } = studLength({ thread: '3/4-10 UNC', clampedParts: parts });
    expect(grip_mm).toBeCloseTo(75.6, 9);
    expect(effectiveLength_mm).toBeCloseTo(75.6 + 19.05, 9);
  });
});

describe('blanks', () => {
  it('grow with the root of the pressure', () => {
    const blank = { gasketInside_mm: 200, allowable_MPa: 138, quality: 1, allowance_mm: 0 };
    const once = blindThickness({ ...blank, pressure_MPa: 1 }).thickness_mm;
    expect(blindThickness({ ...blank, pressure_MPa: 4 }).thickness_mm / once).toBeCloseTo(2, 9);
  });
});

describe('hubs', () => {
  it('of weld necks are thicker at the flange than at the weld', () => {
    const hub = weldNeckHub({ standard: 'ASME-B16.5', size: 'NPS8', rating: '300' });
    expect(hub.hubBase_mm).toBeGreaterThan(hub.pipeOutside_mm);
    expect(hub.bore_mm).toBeCloseTo(hub.pipeOutside_mm - 2 * hub.wall_mm, 0);
  });
});

describe('a target table', () => {
  it('has a row for each size, and says why where it cannot', () => {
    const { flange: _flange, gasket, ...common } = EXAMPLE_TARGET;
    const { contactInside_mm: _in, contactOutside_mm: _out, ...gasketData } = gasket;
    const rows = targetTable({ standard: 'ASME-B16.5', ratings: ['300'], common, gasket: gasketData });
    expect(rows).toHaveLength(21);
    const eight = rows.find(({ size }) => size === 'NPS8');
    expect(eight).toMatchObject({ boltCount: 12, boltThread: '7/8-9 UNC' });
    const without = rows.filter((row) => 'refused' in row).map(({ size }) => size);
    expect(without).toEqual(['NPS22']);
  });
});

describe('units', () => {
  it('come back where they started', () => {
    const quantities = Object.keys(UNITS) as (keyof typeof UNITS)[];
    fc.assert(
      fc.property(
        fc.constantFrom(...quantities),
        fc.double({ min: 1e-3, max: 1e6, noNaN: true }),
        (quantity, value) => {
          for (const from of Object.keys(UNITS[quantity])) {
            for (const to of Object.keys(UNITS[quantity])) {
              const there = convert(quantity, value, from as never, to as never);
              expect(convert(quantity, there, to as never, from as never) / value).toBeCloseTo(1, 9);
            }
          }
        },
      ),
    );
  });

  it('are those of the trade', () => {
    expect(convert('pressure', 50, 'ksi', 'MPa')).toBeCloseTo(344.74, 2);
    expect(convert('torque', 100, 'lbf·ft', 'N·m')).toBeCloseTo(135.58, 2);
    expect(convert('length', 1, 'in', 'mm')).toBe(25.4);
    expect(convert('force', 1, 'kip', 'kN')).toBeCloseTo(4.4482, 4);
  });
});

describe('units that are exact by definition', () => {
  it.each([
    ['length', 1, 'm', 'mm', 1000],
    ['pressure', 10, 'bar', 'MPa', 1],
    ['pressure', 1000, 'kPa', 'MPa', 1],
  ] as const)('%s: %d %s', (quantity, value, from, to, expected) => {
    expect(convert(quantity, value, from as never, to as never)).toBeCloseTo(expected, 12);
  });

  it('water freezes at 32 and boils at 212 °F', () => {
    expect([fahrenheitOf(0), fahrenheitOf(100)]).toEqual([32, 212]);
    expect([celsiusOf(32), celsiusOf(212)]).toEqual([0, 100]);
  });
});
