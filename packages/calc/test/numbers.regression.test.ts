import { describe, expect, it } from 'vitest';
import { regressionResults } from './regression-inputs.ts';

// Values made by this package itself (baseline, no evidence of being right): they only show that a number moved.
const BASELINE: Readonly<Record<string, Readonly<Record<string, number>>>> = {
  'hub 1.2, 0.25': {
    F: 0.896622468,
    V: 0.463875551,
    f: 1,
  },
  'hub 2.5, 0.4': {
    F: 0.843739807,
    V: 0.220358781,
    f: 2.55434603,
  },
  'hub 4, 1.2': {
    F: 0.627767312,
    V: 0.0450447259,
    f: 1,
  },
  'hub 1.8, 2': {
    F: 0.711389125,
    V: 0.150947304,
    f: 1,
  },
  'loose hub 1.2, 0.25': {
    F: 3.05005084,
    V: 8.44681876,
    f: 1,
  },
  'loose hub 3, 0.6': {
    F: 1.39560428,
    V: 0.439040269,
    f: 1,
  },
  'integral flange': {
    longitudinalHub_MPa: 81.1726609,
    radial_MPa: 25.7387602,
    tangential_MPa: 38.0318236,
    rigidityJ: 0.272779339,
    momentOperating_Nm: 31337.3614,
    momentSeating_Nm: 31500,
  },
  'loose flange with hub': {
    longitudinalHub_MPa: 79.1456249,
    radial_MPa: 27.1813263,
    tangential_MPa: 45.4000498,
    rigidityJ: 0.498573882,
    momentOperating_Nm: 34800.9673,
    momentSeating_Nm: 31500,
  },
  'loose flange without hub': {
    longitudinalHub_MPa: 0,
    radial_MPa: 0,
    tangential_MPa: 118.685087,
    rigidityJ: 1.19097629,
    momentOperating_Nm: 34800.9673,
    momentSeating_Nm: 31500,
  },
  'gasket loads': {
    effectiveWidth_mm: 8.90954544,
    reactionDiameter_mm: 462.180909,
    equivalentPressure_MPa: 2.58348734,
    hydrostaticEndForce_N: 433431.254,
    gasketOperatingLoad_N: 155238.225,
    operatingBoltLoad_N: 588669.479,
    seatingBoltLoad_N: 892619.794,
  },
  'narrow gasket': {
    effectiveWidth_mm: 4.5,
    reactionDiameter_mm: 471,
    equivalentPressure_MPa: 2,
    hydrostaticEndForce_N: 348467.028,
    gasketOperatingLoad_N: 53268.845,
    operatingBoltLoad_N: 401735.873,
    seatingBoltLoad_N: 133172.113,
  },
  'bolt area': {
    requiredArea_mm2: 3750,
    seatingDesignLoad_N: 709500,
  },
  M27: {
    nominalDiameter_mm: 27,
    pitch_mm: 3,
    pitchDiameter_mm: 25.051443,
    minorDiameter_mm: 23.319393,
    tensileStressArea_mm2: 459.406438,
    rootArea_mm2: 427.094879,
    pcc1RootArea_mm2: 419.20104,
  },
  '1 3/8-8 UN': {
    nominalDiameter_mm: 34.925,
    pitch_mm: 3.175,
    pitchDiameter_mm: 32.8627772,
    minorDiameter_mm: 30.8005543,
    tensileStressArea_mm2: 795.80516,
    rootArea_mm2: 745.086934,
  },
  'preload M27': {
    load_N: 216379.414,
  },
  'torsion M27': {
    factor: 1.12102438,
  },
  'torque M27': {
    torque_Nm: 855.689028,
    load_N: 200000,
  },
  elongation: {
    elongation_mm: 0.413835391,
  },
  'stud M27': {
    exactLength_mm: 172.8,
    length_mm: 175,
    grip_mm: 91.8,
    effectiveLength_mm: 118.8,
  },
  'stud 7/8': {
    exactLength_mm: 130.25,
    length_mm: 133.35,
    length_in: 5.25,
    grip_mm: 85.8,
    effectiveLength_mm: 108.025,
  },
  'standard stud, small': {
    exactLength_in: 3.16795276,
    length_in: 3.25,
    length_mm: 85,
  },
  'standard stud, above 12 in': {
    exactLength_in: 12.73,
    length_in: 12.75,
    length_mm: 325,
  },
  'standard stud, high class': {
    exactLength_in: 11.31,
    length_in: 11.25,
    length_mm: 285,
  },
  'standard stud, long': {
    exactLength_in: 24.25,
    length_in: 24.25,
    length_mm: 615,
  },
  'gas test': {
    storedEnergy_J: 36915619.1,
    tntEquivalent_kg: 8.65158455,
    distance_m: 51.7295316,
    scaledDistance_m: 51.7295316,
  },
  'air test': {
    storedEnergy_J: 32484335.6,
    tntEquivalent_kg: 7.61306414,
    distance_m: 39.344421,
    scaledDistance_m: 39.344421,
  },
  'gas warmed': {
    pressure_MPa: 2.25974351,
  },
  'water warmed': {
    rise_MPa: 0.924825786,
  },
  blank: {
    thickness_mm: 23.6506351,
  },
  tensioner: {
    loadTransferFactor: 1.21,
    toolLoad_N: 363000,
    pressure_MPa: 90.75,
    utilisation: 0.617304693,
  },
  'tension groups': {
    '0': 153.236317,
    '1': 100,
  },
  'window, torque': {
    'bolt-minimum': 158.573348,
    'gasket-seating': 182.210813,
    'gasket-operating': 160.606705,
    'gasket-test': 188.849825,
    'code-operating': 75.4871143,
    'code-seating': 115.539608,
    'bolt-maximum': 475.720045,
    'bolt-yield': 596.107407,
    'gasket-maximum': 728.843252,
    load_N: 88723.2693,
    gasket_MPa: 90,
    low_MPa: 262.383571,
    high_MPa: 393.575356,
    torque_Nm: 315.499946,
    acrossFlats_mm: 36.51,
  },
  'window, defaults': {
    'bolt-minimum': 158.573348,
    'gasket-seating': 182.210813,
    'gasket-operating': 160.606705,
    'code-operating': 75.4871143,
    'code-seating': 115.539608,
    'bolt-maximum': 475.720045,
    'bolt-yield': 568.036049,
    'gasket-maximum': 728.843252,
    load_N: 88723.2693,
    gasket_MPa: 90,
    low_MPa: 245.984597,
    high_MPa: 409.974329,
    torque_Nm: 302.520955,
    acrossFlats_mm: 36.51,
  },
  'window, hydraulic': {
    'bolt-minimum': 158.573348,
    'gasket-seating': 182.210813,
    'gasket-operating': 160.606705,
    'code-operating': 75.4871143,
    'code-seating': 115.539608,
    'bolt-maximum': 475.720045,
    'bolt-yield': 572.263111,
    'gasket-maximum': 728.843252,
    load_N: 88723.2693,
    gasket_MPa: 90,
    low_MPa: 245.984597,
    high_MPa: 409.974329,
    torque_Nm: 315.499946,
    acrossFlats_mm: 36.51,
  },
  'window, tensioner': {
    'bolt-minimum': 158.573348,
    'gasket-seating': 182.210813,
    'gasket-operating': 160.606705,
    'code-operating': 75.4871143,
    'code-seating': 115.539608,
    'bolt-maximum': 475.720045,
    'bolt-yield': 689.449341,
    'gasket-maximum': 728.843252,
    load_N: 88723.2693,
    gasket_MPa: 90,
    low_MPa: 278.782544,
    high_MPa: 377.176383,
    toolLoad_N: 107821.555,
    pressure_MPa: 35.9405185,
    acrossFlats_mm: 36.51,
  },
  'window, elongation, ribs': {
    'bolt-minimum': 158.573348,
    'gasket-seating': 194.533002,
    'gasket-operating': 167.647955,
    'code-operating': 75.4871143,
    'code-seating': 115.539608,
    'bolt-maximum': 475.720045,
    'bolt-yield': 681.265608,
    'gasket-maximum': 778.132007,
    load_N: 94723.2693,
    gasket_MPa: 90,
    low_MPa: 332.651433,
    high_MPa: 367.667373,
    effectiveLength_mm: 108.279,
    elongation_mm: 0.16877657,
    acrossFlats_mm: 36.51,
  },
  'window, thread without a nut in the table': {
    'bolt-minimum': 155.629881,
    'gasket-seating': 92.5674055,
    'gasket-operating': 81.5920072,
    'code-operating': 38.3492407,
    'code-seating': 58.6968555,
    'bolt-maximum': 466.889644,
    'bolt-yield': 588.107105,
    'gasket-maximum': 370.269622,
    load_N: 88723.2693,
    gasket_MPa: 90,
    low_MPa: 133.297064,
    high_MPa: 199.945596,
    torque_Nm: 428.178498,
  },
  'weak joint': {
    gasketStress_MPa: 57.340185,
    neededBoltStress_MPa: 415.153875,
    neededShareOfYield: 0.576602605,
  },
};

describe('regression baseline', () => {
  const now = regressionResults();

  it.each(Object.keys(BASELINE))('%s has not moved', (name) => {
    const then = BASELINE[name] ?? {};
    const values = now[name] ?? {};
    expect(Object.keys(values).sort()).toEqual(Object.keys(then).sort());
    for (const [key, value] of Object.entries(then)) {
      const moved = Math.abs((values[key] ?? Number.NaN) - value);
      expect(moved, key).toBeLessThanOrEqual(1e-6 * Math.max(1e-6, Math.abs(value)));
    }
  });

  it('covers every input', () => {
    expect(Object.keys(now).sort()).toEqual(Object.keys(BASELINE).sort());
  });
});
