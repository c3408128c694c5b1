import { integralHubFactors, looseHubFactors } from '../src/code-loads/hub-factors.ts';
import {
  assemblyLoad,
  blindThickness,
  elongation,
  flangeStress,
  gasketLoads,
  gasPressureAtTemperature,
  liquidPressureRise,
  pneumaticTest,
  requiredBoltArea,
  standardStudLength,
  studLength,
  targetWindow,
  tensioner,
  tensionerGroupLoads,
  threadGeometry,
  torqueFromLoad,
  torsionFactor,
  weakStandardJoints,
} from '../src/index.ts';
import { EXAMPLE_TARGET } from './example-joints.ts';

const PARTS = [
  { kind: 'flange', thickness_mm: 41.3 },
  { kind: 'gasket', thickness_mm: 3.2 },
  { kind: 'flange', thickness_mm: 41.3 },
];

function flange(kind: 'integral' | 'loose', hub: boolean) {
  const { longitudinalHub_MPa, radial_MPa, tangential_MPa, rigidityJ, momentOperating_Nm, momentSeating_Nm } =
    flangeStress({
      kind,
      outsideDiameter_mm: 620,
      insideDiameter_mm: 420,
      boltCircle_mm: 560,
      thickness_mm: 60,
      ...(hub ? { hub: { length_mm: 70, smallThickness_mm: 12, largeThickness_mm: 25 } } : {}),
      loads: {
        reactionDiameter_mm: 470,
        equivalentPressure_MPa: 2,
        operatingBoltLoad_N: 600_000,
        seatingDesignLoad_N: 700_000,
      },
      allowables: {
        flangeOperating_MPa: 138,
        flangeSeating_MPa: 138,
        elasticModulusOperating_MPa: 190_000,
        elasticModulusSeating_MPa: 200_000,
      },
    });
  return { longitudinalHub_MPa, radial_MPa, tangential_MPa, rigidityJ, momentOperating_Nm, momentSeating_Nm };
}

const windowOf = (request: Parameters<typeof targetWindow>[0]) => {
  const { window, target, spread, tool } = targetWindow(request);
  return {
    ...Object.fromEntries([...window.lower, ...window.upper].map((limit) => [limit.name, limit.boltStress_MPa])),
    load_N: target.boltLoad_N,
    gasket_MPa: target.gasketStress_MPa,
    low_MPa: spread.low_MPa,
    high_MPa: spread.high_MPa,
    ...tool,
  };
};

const numbersOf = (values: object) =>
  Object.fromEntries(Object.entries(values).filter((entry): entry is [string, number] => typeof entry[1] === 'number'));

/** Fixed inputs with every number that they lead to. */
export const regressionResults = (): Record<string, Record<string, number>> => ({
  'hub 1.2, 0.25': { ...integralHubFactors(1.2, 0.25) },
  'hub 2.5, 0.4': { ...integralHubFactors(2.5, 0.4) },
  'hub 4, 1.2': { ...integralHubFactors(4, 1.2) },
  'hub 1.8, 2': { ...integralHubFactors(1.8, 2) },
  'loose hub 1.2, 0.25': { ...looseHubFactors(1.2, 0.25) },
  'loose hub 3, 0.6': { ...looseHubFactors(3, 0.6) },
  'integral flange': flange('integral', true),
  'loose flange with hub': flange('loose', true),
  'loose flange without hub': flange('loose', false),
  'gasket loads': numbersOf(
    gasketLoads({
      gasketOutside_mm: 480,
      gasketInside_mm: 430,
      m: 3,
      y_MPa: 69,
      pressure_MPa: 2,
      axialForce_N: 20_000,
      moment_Nm: 9000,
    }),
  ),
  'narrow gasket': numbersOf(
    gasketLoads({ gasketOutside_mm: 480, gasketInside_mm: 462, m: 2, y_MPa: 20, pressure_MPa: 2 }),
  ),
  'bolt area': numbersOf(
    requiredBoltArea({
      operatingBoltLoad_N: 600_000,
      seatingBoltLoad_N: 500_000,
      boltAllowableOperating_MPa: 160,
      boltAllowableAmbient_MPa: 172,
      boltArea_mm2: 4500,
    }),
  ),
  M27: numbersOf(threadGeometry({ thread: 'M27' })),
  '1 3/8-8 UN': numbersOf(threadGeometry({ thread: '1 3/8-8 UN' })),
  'preload M27': numbersOf(assemblyLoad({ thread: 'M27', yield_MPa: 660, utilisation: 0.8, threadFriction: 0.13 })),
  'torsion M27': { factor: torsionFactor('M27', 0.13) },
  'torque M27': numbersOf(
    torqueFromLoad({
      thread: 'M27',
      load_N: 2e5,
      model: 'friction',
      threadFriction: 0.11,
      bearingFriction: 0.13,
      bearingOuterDiameter_mm: 38,
      bearingInnerDiameter_mm: 30,
    }),
  ),
  elongation: numbersOf(
    elongation({
      thread: 'M27',
      load_N: 2e5,
      effectiveLength_mm: 200,
      elasticModulus_MPa: 205_000,
      shankLength_mm: 80,
      shankDiameter_mm: 25,
    }),
  ),
  'stud M27': numbersOf(studLength({ thread: 'M27', clampedParts: PARTS, washers_mm: 6, protrusion_mm: 27 })),
  'stud 7/8': numbersOf(studLength({ thread: '7/8-9 UNC', clampedParts: PARTS })),
  'standard stud, small': standardStudLength({ standard: 'ASME-B16.5', size: 'NPS2', rating: '150' }),
  'standard stud, above 12 in': standardStudLength({ standard: 'ASME-B16.5', size: 'NPS18', rating: '900' }),
  'standard stud, high class': standardStudLength({ standard: 'ASME-B16.5', size: 'NPS20', rating: '600' }),
  'standard stud, long': standardStudLength({ standard: 'ASME-B16.5', size: 'NPS24', rating: '1500' }),
  'gas test': numbersOf(pneumaticTest({ testPressure_MPa: 0.8, volume_m3: 31, gasRatio: 1.3, method: 'PCC-2-2018' })),
  'air test': numbersOf(pneumaticTest({ testPressure_MPa: 0.8, volume_m3: 31, method: 'PCC-2-2008' })),
  'gas warmed': gasPressureAtTemperature({ pressure_MPa: 2, from_C: 10, to_C: 45 }),
  'water warmed': liquidPressureRise({
    temperatureRise_K: 3,
    outsideDiameter_mm: 168.3,
    wall_mm: 7.11,
    expansion_perK: 2.1e-4,
    bulkModulus_MPa: 2180,
    elasticModulus_MPa: 207_000,
    pipeExpansion_perK: 1.17e-5,
  }),
  blank: numbersOf(
    blindThickness({ gasketInside_mm: 300, pressure_MPa: 3, allowable_MPa: 120, quality: 0.9, allowance_mm: 2 }),
  ),
  tensioner: numbersOf(
    tensioner({
      thread: 'M36',
      residualLoad_N: 3e5,
      effectiveLength_mm: 180,
      hydraulicArea_mm2: 4000,
      coverage: 1,
      yield_MPa: 720,
    }),
  ),
  'tension groups': Object.fromEntries(
    tensionerGroupLoads({
      joint: {
        standard: 'ASME-B16.5',
        size: 'NPS12',
        rating: '600',
        kind: 'weld-neck-pair',
        gasket: { family: 'spiral-wound' },
      },
      residualLoad_N: 2e5,
      coverage: 0.5,
    }).percents.map((percent, group) => [String(group), percent]),
  ),
  'window, torque': windowOf({
    ...EXAMPLE_TARGET,
    service: { pressure_MPa: 3, temperature_C: 50, testPressure_MPa: 4.5 },
  }),
  'window, defaults': windowOf({
    ...EXAMPLE_TARGET,
    policy: { minimumBoltUtilisation: 0.2, maximumBoltUtilisation: 0.6 },
    lubricant: { threadFriction: 0.12, bearingFriction: 0.1, source: 'test' },
  }),
  'window, hydraulic': windowOf({
    ...EXAMPLE_TARGET,
    method: 'hydraulic-wrench',
    policy: { minimumBoltUtilisation: 0.2, maximumBoltUtilisation: 0.6 },
  }),
  'window, tensioner': windowOf({
    ...EXAMPLE_TARGET,
    method: 'tensioner',
    clampedParts: PARTS,
    tool: { hydraulicArea_mm2: 3000 },
    policy: { minimumBoltUtilisation: 0.2, maximumBoltUtilisation: 0.6 },
  }),
  'window, elongation, ribs': windowOf({
    ...EXAMPLE_TARGET,
    method: 'elongation',
    clampedParts: PARTS,
    bolting: { grade: 'B7', condition: 'new', elasticModulus_MPa: 204_000 },
    gasket: { ...EXAMPLE_TARGET.gasket, ribArea_mm2: 800 },
    policy: { minimumBoltUtilisation: 0.2, maximumBoltUtilisation: 0.6 },
  }),
  'window, thread without a nut in the table': windowOf({
    ...EXAMPLE_TARGET,
    flange: { custom: { boltCount: 12, boltThread: '1 3/16-8 UN' } },
    lubricant: { nutFactor: 0.16, source: 'test' },
  }),
  'weak joint': {
    ...numbersOf(
      weakStandardJoints({
        standard: 'ASME-B16.5',
        family: 'spiral-wound',
        boltStress_MPa: 345,
        gasketStress_MPa: 69,
        grade: 'B7',
      })[3] ?? {},
    ),
  },
});
