// Requests shown in the OpenAPI document. Gasket, lubricant and allowables are examples, not for work; their sources
// say so. The answers beside them are made by the code when the document is asked for.
import type { CalcTargetRequest, simulationRequest } from '@seatwell/contract';
import type { z } from 'zod';

const NOT_FOR_WORK = 'Example, not for work';

const target: CalcTargetRequest = {
  flange: {
    standard: 'ASME-B16.5',
    size: 'NPS8',
    rating: '300',
    strength: {
      kind: 'integral',
      allowableAmbient_MPa: 138,
      allowableOperating_MPa: 138,
      elasticModulusAmbient_MPa: 202_000,
      elasticModulusOperating_MPa: 192_000,
      source: NOT_FOR_WORK,
    },
  },
  clampedParts: [
    { kind: 'flange', thickness_mm: 42.7 },
    { kind: 'gasket', thickness_mm: 3.2 },
    { kind: 'flange', thickness_mm: 42.7 },
  ],
  gasket: {
    family: 'spiral-wound',
    contactOutside_mm: 263.7,
    contactInside_mm: 233.4,
    limits: { seating_MPa: 69, operating_MPa: 48, target_MPa: 125, maximum_MPa: 300, source: NOT_FOR_WORK },
  },
  bolting: { grade: 'B7', condition: 'new', nut: '2H', elasticModulus_MPa: 205_000 },
  service: {
    pressure_MPa: 2,
    temperature_C: 200,
    testPressure_MPa: 3,
    thermal: {
      assemblyTemperature_C: 20,
      states: [{ name: 'start-up', boltTemperature_C: 150, flangeTemperature_C: 180 }],
      boltExpansion_perK: 1.2e-5,
      flangeExpansion_perK: 1.2e-5,
      source: NOT_FOR_WORK,
    },
  },
  lubricant: { nutFactor: 0.16, source: NOT_FOR_WORK },
  method: 'torque-wrench',
  area: 'root',
  policy: { minimumBoltUtilisation: 0.2, maximumBoltUtilisation: 0.7, scatter_percent: 25 },
  passPercents: [30, 70, 100],
};

const { flange: _flange, gasket: _gasket, clampedParts: _parts, service, ...family } = target;
const { contactInside_mm: _in, contactOutside_mm: _out, ...familyGasket } = target.gasket;

const simulation: z.input<typeof simulationRequest> = {
  joint: {
    standard: 'ASME-B16.5',
    size: 'NPS4',
    rating: '300',
    kind: 'weld-neck-pair',
    gasket: { family: 'spiral-wound' },
  },
  target_MPa: 300,
  area: 'root',
  passes: [
    { percent: 50, steps: [[1], [5], [3], [7], [2], [6], [4], [8]] },
    { percent: 100, steps: [[1], [5], [3], [7], [2], [6], [4], [8]] },
    { percent: 100, steps: [[1], [2], [3], [4], [5], [6], [7], [8]] },
  ],
};

export const CALC_EXAMPLES = {
  flange: { standard: 'ASME-B16.5', size: 'NPS8', rating: '300' },
  thread: { thread: 'M20', working: true },
  torque: { thread: '7/8-9 UNC', load_N: 98_000, model: 'nut-factor', nutFactor: 0.16, working: true },
  assemblyLoad: { thread: 'M12', yield_MPa: 640, utilisation: 0.9, threadFriction: 0.12 },
  sequence: { boltCount: 8, pattern: 'legacy', numbering: 'clockwise', passPercents: [30, 70, 100] },
  gasketLoads: { gasketOutside_mm: 263.7, gasketInside_mm: 233.4, m: 3, y_MPa: 69, pressure_MPa: 2, moment_Nm: 4000 },
  target,
  flangeStress: {
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
  },
  elongation: { thread: 'M30x3', load_N: 200_000, effectiveLength_mm: 250, elasticModulus_MPa: 207_000 },
  tensioner: {
    thread: 'M36',
    residualLoad_N: 300_000,
    effectiveLength_mm: 150,
    hydraulicArea_mm2: 4000,
    coverage: 0.5,
    yield_MPa: 720,
    protrusion_mm: 40,
  },
  pneumaticTest: { testPressure_MPa: 1.1, volume_m3: 50, method: 'PCC-2-2018' },
  simulation,
  sensitivities: target,
  targetTable: {
    standard: 'ASME-B16.5',
    sizes: ['NPS4', 'NPS6', 'NPS8'],
    ratings: ['300'],
    common: { ...family, service: { pressure_MPa: service.pressure_MPa, temperature_C: service.temperature_C } },
    gasket: familyGasket,
  },
  weakJoints: {
    standard: 'ASME-B16.5',
    family: 'spiral-wound',
    boltStress_MPa: 344.74,
    gasketStress_MPa: 69,
    grade: 'B7',
  },
  face: {
    gasketFamily: 'spiral-wound',
    seatingWidth_mm: 15,
    flatness_mm: 0.2,
    imperfections: [{ reach_mm: 5, depth_mm: 0.8 }],
  },
  alignment: {
    joint: 'machine-nozzle',
    flange: { standard: 'ASME-B16.5', size: 'NPS8', rating: '300' },
    offset_mm: 0.8,
    parallelism_mm: 0.3,
    shaftMovement_mm: 0.03,
  },
  retightening: { family: 'ptfe-sheet', hasBeenHot: false, temperature_C: 20, hoursSinceAssembly: 6 },
} as const;
