import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  assemblyLoad,
  blindThickness,
  type Explained,
  elongation,
  flangeStress,
  gasketLoads,
  loadFromTorque,
  pneumaticTest,
  studLength,
  type TargetRequest,
  targetWindow,
  tensioner,
  threadGeometry,
  tighteningSequence,
  torqueFromLoad,
} from '../src/index.ts';
import { evaluate } from './evaluate.ts';
import { EXAMPLE_TARGET } from './example-joints.ts';

const working = true;
const friction = {
  model: 'friction',
  threadFriction: 0.12,
  bearingFriction: 0.14,
  bearingOuterDiameter_mm: 30,
  bearingInnerDiameter_mm: 22,
} as const;
const hubbed = {
  kind: 'integral',
  outsideDiameter_mm: 482.6,
  insideDiameter_mm: 311.15,
  boltCircle_mm: 431.8,
  thickness_mm: 30.2,
  hub: { length_mm: 76.2, smallThickness_mm: 6.35, largeThickness_mm: 27.05 },
  loads: {
    reactionDiameter_mm: 359.7,
    equivalentPressure_MPa: 1.3,
    operatingBoltLoad_N: 203_000,
    seatingDesignLoad_N: 569_800,
  },
  allowables: {
    flangeOperating_MPa: 138,
    flangeSeating_MPa: 138,
    elasticModulusOperating_MPa: 190_000,
    elasticModulusSeating_MPa: 200_000,
  },
} as const;
const ring = { gasketOutside_mm: 374, gasketInside_mm: 340, m: 3, y_MPa: 69, pressure_MPa: 2 } as const;

// Each calculation with the name of the result that its last step (or the named step) must reach.
const ANSWERS: readonly [name: string, answer: Explained, results: Record<string, number>][] = (() => {
  const thread = threadGeometry({ thread: 'M20', working });
  const inch = threadGeometry({ thread: '1 1/8-8 UN', working });
  const torque = torqueFromLoad({ thread: 'M20', load_N: 123_456, ...friction, working });
  const nut = torqueFromLoad({ thread: 'M20', load_N: 123_456, model: 'nut-factor', nutFactor: 0.17, working });
  const load = loadFromTorque({ thread: 'M20', torque_Nm: 345, ...friction, working });
  const preload = assemblyLoad({ thread: 'M12', yield_MPa: 640, utilisation: 0.9, threadFriction: 0.12, working });
  const stretch = elongation({
    thread: 'M30',
    load_N: 2e5,
    effectiveLength_mm: 250,
    elasticModulus_MPa: 207_000,
    shankLength_mm: 100,
    working,
  });
  const tool = tensioner({
    thread: 'M36',
    residualLoad_N: 3e5,
    effectiveLength_mm: 150,
    hydraulicArea_mm2: 4000,
    coverage: 1,
    yield_MPa: 720,
    working,
  });
  const air = pneumaticTest({ testPressure_MPa: 1.1, volume_m3: 50, method: 'PCC-2-2018', working });
  const gas = pneumaticTest({ testPressure_MPa: 1.1, volume_m3: 50, gasRatio: 1.3, method: 'PCC-2-2008', working });
  const code = gasketLoads({ ...ring, moment_Nm: 5000, axialForce_N: 2000, working });
  const narrow = gasketLoads({ ...ring, gasketInside_mm: 360, facing: 'ring-joint', working });
  const flange = flangeStress({ ...hubbed, working });
  const plate = blindThickness({
    gasketInside_mm: 200,
    pressure_MPa: 2,
    allowable_MPa: 138,
    quality: 1,
    allowance_mm: 3,
    working,
  });
  const parts = [
    { kind: 'flange', thickness_mm: 28 },
    { kind: 'gasket', thickness_mm: 3 },
    { kind: 'flange', thickness_mm: 28 },
  ];
  const stud = studLength({ thread: 'M20', clampedParts: parts, protrusion_mm: 20, working });
  const sequence = tighteningSequence({ boltCount: 12, pattern: 'legacy', numbering: 'clockwise', working });
  const target = targetWindow({ ...EXAMPLE_TARGET, working });
  return [
    ['thread, metric', thread, { As: thread.tensileStressArea_mm2, A3: thread.rootArea_mm2 }],
    ['thread, inch', inch, { As: inch.tensileStressArea_mm2, Ar: inch.rootArea_mm2 }],
    ['torque by friction', torque, { T: torque.torque_Nm }],
    ['torque by nut factor', nut, { T: nut.torque_Nm }],
    ['load from torque', load, { F: load.load_N }],
    ['assembly load', preload, { F: preload.load_N }],
    ['elongation', stretch, { ΔL: stretch.elongation_mm }],
    ['tensioner', tool, { LTF: tool.loadTransferFactor, Ft: tool.toolLoad_N, p: tool.pressure_MPa }],
    ['gas test, air', air, { E: air.storedEnergy_J, TNT: air.tntEquivalent_kg, R: air.distance_m }],
    ['gas test, k 1.3', gas, { E: gas.storedEnergy_J, R: gas.distance_m }],
    ['code loads', code, { b: code.effectiveWidth_mm, Wm1: code.operatingBoltLoad_N, Wm2: code.seatingBoltLoad_N }],
    ['code loads, ring joint', narrow, { G: narrow.reactionDiameter_mm, Wm1: narrow.operatingBoltLoad_N }],
    ['flange stress', flange, { K: flange.K, Mo: flange.momentOperating_Nm, Mg: flange.momentSeating_Nm }],
    ['blank', plate, { t: plate.thickness_mm }],
    ['stud', stud, { L: stud.exactLength_mm }],
    ['sequence', sequence, { moves: sequence.moves }],
    ['target', target, { Sb: target.target.boltStress_MPa, Sg: target.target.gasketStress_MPa }],
  ];
})();

describe('the working can be followed by hand', () => {
  it.each(ANSWERS)('%s: each step recomputes to its value', (_name, answer) => {
    expect(answer.working?.length).toBeGreaterThan(0);
    for (const step of answer.working ?? []) {
      const byHand = evaluate(step.substituted);
      expect(Math.abs(byHand - step.value), `${step.symbol} = ${step.substituted}`).toBeLessThanOrEqual(
        Math.abs(step.value) * 2e-5 + 1e-9,
      );
      expect(step.source.length).toBeGreaterThan(2);
    }
  });

  it.each(ANSWERS)('%s: the steps reach the result', (_name, answer, results) => {
    for (const [symbol, value] of Object.entries(results)) {
      expect(answer.working?.find((step) => step.symbol === symbol)?.value, symbol).toBe(value);
    }
  });
});

/** Joints with every limit that a window can have, their numbers drawn at random. */
const anyRequest: fc.Arbitrary<TargetRequest> = fc
  .record({
    pressure: fc.double({ min: 0, max: 1.5, noNaN: true }),
    seating: fc.double({ min: 10, max: 80, noNaN: true }),
    allowable: fc.double({ min: 140, max: 260, noNaN: true }),
    bolts_C: fc.double({ min: 0, max: 90, noNaN: true }),
    flanges_C: fc.double({ min: 0, max: 90, noNaN: true }),
    pull: fc.double({ min: 0, max: 20_000, noNaN: true }),
    area: fc.constantFrom('root' as const, 'tensile' as const),
    custom: fc.boolean(),
    hub: fc.boolean(),
    soft: fc.boolean(),
    entered: fc.boolean(),
  })
  .map(({ custom, ...drawn }) => ({
    ...EXAMPLE_TARGET,
    area: drawn.area,
    clampedParts: [{ kind: 'stack', thickness_mm: 88 }],
    flange: {
      ...(custom
        ? { custom: { boltCount: 12, boltThread: '7/8-9 UNC', boltCircle_mm: 330, thickness_mm: 41 } }
        : { standard: 'ASME-B16.5', size: 'NPS8', rating: '300' }),
      strength: {
        ...(drawn.hub
          ? { kind: 'integral' as const, hub: { length_mm: 70, smallThickness_mm: 8.2, largeThickness_mm: 28 } }
          : { kind: 'loose' as const }),
        outsideDiameter_mm: 381,
        insideDiameter_mm: 203,
        allowableAmbient_MPa: drawn.allowable,
        allowableOperating_MPa: drawn.allowable * 0.9,
        elasticModulusAmbient_MPa: 200_000,
        elasticModulusOperating_MPa: 185_000,
        source: 'test data',
      },
      rotation: { gasketLimit_deg: 0.3, ...(drawn.entered ? { flangeAtMaximum_deg: 0.4 } : {}), source: 'test data' },
      maximumBoltStress_MPa: 500,
    },
    gasket: {
      ...EXAMPLE_TARGET.gasket,
      limits: { seating_MPa: drawn.seating, operating_MPa: 20, target_MPa: 90, maximum_MPa: 200, source: 'test data' },
    },
    bolting: { ...EXAMPLE_TARGET.bolting, elasticModulus_MPa: 205_000, washers: { perBolt: 2 } },
    service: {
      pressure_MPa: drawn.pressure,
      temperature_C: 100,
      testPressure_MPa: drawn.pressure * 1.5,
      axialForce_N: drawn.pull,
      moment_Nm: drawn.pull / 10,
      thermal: {
        assemblyTemperature_C: 20,
        states: [{ name: 'one', boltTemperature_C: drawn.bolts_C, flangeTemperature_C: drawn.flanges_C }],
        boltExpansion_perK: 1.2e-5,
        flangeExpansion_perK: 1.15e-5,
        source: 'test data',
        ...(drawn.soft ? { stiffness: { flanges_N_per_mm: 8e6, gaskets_N_per_mm: 2e6, source: 'test data' } } : {}),
      },
    },
    working,
  }));

describe('the working of any window', () => {
  it('recomputes step by step, and has a step for each limit, the target and the tool', () => {
    fc.assert(
      fc.property(anyRequest, (request) => {
        const { window, target, tool, flangeStress = [], working: steps = [] } = targetWindow(request);
        for (const step of steps) {
          const off = Math.abs(evaluate(step.substituted) - step.value);
          expect(off, `${step.symbol} = ${step.substituted}`).toBeLessThanOrEqual(Math.abs(step.value) * 5e-5 + 1e-4);
        }
        const values = steps.map(({ value }) => value);
        for (const limit of [...window.lower, ...window.upper])
          expect(values, limit.name).toContain(limit.boltStress_MPa);
        expect(values).toContain(target.boltStress_MPa);
        expect(values).toContain(tool.torque_Nm);
        for (const { case: _case, ok: _ok, ...state } of flangeStress) {
          for (const value of Object.values(state)) expect(values).toContain(value);
        }
      }),
      { numRuns: 60 },
    );
  });
});

describe('without the question there is no working', () => {
  it('and the values are the same', () => {
    const { working: _steps, ...asked } = targetWindow({ ...EXAMPLE_TARGET, working });
    expect(targetWindow(EXAMPLE_TARGET)).toEqual(asked);
  });
});
