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

describe('without the question there is no working', () => {
  it('and the values are the same', () => {
    const { working: _steps, ...asked } = targetWindow({ ...EXAMPLE_TARGET, working });
    expect(targetWindow(EXAMPLE_TARGET)).toEqual(asked);
  });
});
