import fc from 'fast-check';
import { GASKET_CURVES, type SimulationJoint, standardJoint, type TighteningPass } from '../../../src/index.ts';

export const SPIRAL_WOUND = GASKET_CURVES['spiral-wound']!;

/** A joint of standard weld-neck flanges with a spiral-wound gasket, and its target at 345 MPa on stress area. */
export function standardAt345(
  standard: string,
  size: string,
  rating: string,
  kind: 'weld-neck-pair' | 'weld-neck-to-blind' = 'weld-neck-pair',
  boltCount?: number,
): { readonly joint: SimulationJoint; readonly target_N: number } {
  const { joint, tensileArea_mm2 } = standardJoint({
    standard,
    size,
    rating,
    kind,
    ...(boltCount === undefined ? {} : { boltCount }),
    gasket: { family: 'spiral-wound' },
  });
  return { joint, target_N: 345 * tensileArea_mm2 };
}

/** Class 300 NPS 24: 24 bolts, the joint that needs the most passes of the common ones. */
export const LARGE = standardAt345('ASME-B16.5', 'NPS24', '300');
/** Class 300 NPS 6: 12 bolts. */
export const MIDDLE = standardAt345('ASME-B16.5', 'NPS6', '300');

/** A linear gasket that pulls as well as it pushes, MPa per mm. */
export function bondedGasket(stiffness_MPa_per_mm: number) {
  return { thickness_mm: 10, points: [[1, stiffness_MPa_per_mm]] as const, E0_MPa: 0, K1: 0, bonded: true };
}

/** A made-up joint of a given bolt count in the proportions of standard flanges. */
export function joint(boltCount: number, flexibility = 1): SimulationJoint {
  const boltCircle_mm = 30 * boltCount + 60;
  return {
    ring: {
      radius_mm: 0.43 * boltCircle_mm,
      bendingStiffness_Nmm2: (4e6 * boltCircle_mm ** 2) / flexibility,
      torsionStiffness_Nmm2: (1.5e6 * boltCircle_mm ** 2) / flexibility,
    },
    boltCount,
    boltCircle_mm,
    boltLength_mm: 150,
    boltArea_mm2: 600,
    boltCompliance_mm_per_N: 1e-7,
    faceCompliance_mm3_per_N: 2e-4,
    gasket: {
      contactInside_mm: 0.75 * boltCircle_mm,
      contactOutside_mm: 0.75 * boltCircle_mm + 40,
      curve: SPIRAL_WOUND,
    },
  };
}

const logarithmic = (low: number, high: number) =>
  fc.double({ min: Math.log(low), max: Math.log(high), noNaN: true }).map(Math.exp);

const share = (low: number, high: number) => fc.double({ min: low, max: high, noNaN: true });

/** Joints well beyond the proportions of real ones: stiff and limp rings, soft and hard gaskets, stops, tilts. */
export const anyJoint: fc.Arbitrary<SimulationJoint> = fc
  .record({
    boltCount: fc.integer({ min: 4, max: 40 }),
    boltCircle_mm: logarithmic(60, 2500),
    radius: share(0.6, 1.05),
    bending: logarithmic(1e4, 1e10),
    twisting: logarithmic(1e4, 1e10),
    length: logarithmic(40, 600),
    area: logarithmic(80, 6000),
    compliance: share(-0.1, 0.5),
    face: fc.oneof(fc.constant(0), logarithmic(1e-6, 1e-3)),
    outside: share(0.5, 0.97),
    width: share(0.03, 0.2),
    family: fc.constantFrom(...Object.keys(GASKET_CURVES)),
    stop: fc.option(logarithmic(0.05, 2), { nil: undefined }),
    tilt: fc.option(logarithmic(0.01, 2), { nil: undefined }),
  })
  .map((drawn) => ({
    ring: {
      radius_mm: (drawn.radius * drawn.boltCircle_mm) / 2,
      bendingStiffness_Nmm2: drawn.bending * drawn.boltCircle_mm ** 2,
      torsionStiffness_Nmm2: drawn.twisting * drawn.boltCircle_mm ** 2,
    },
    boltCount: drawn.boltCount,
    boltCircle_mm: drawn.boltCircle_mm,
    boltLength_mm: drawn.length,
    boltArea_mm2: drawn.area,
    boltCompliance_mm_per_N: (drawn.compliance * drawn.length) / (200_000 * drawn.area),
    faceCompliance_mm3_per_N: drawn.face,
    gasket: {
      contactInside_mm: drawn.outside * drawn.boltCircle_mm * (1 - drawn.width),
      contactOutside_mm: drawn.outside * drawn.boltCircle_mm,
      curve: GASKET_CURVES[drawn.family]!,
    },
    ...(drawn.stop === undefined
      ? {}
      : {
          guideRing: {
            closure_mm: drawn.stop,
            diameter_mm: drawn.outside * drawn.boltCircle_mm * 1.02,
            stiffness_N_per_mm2: 3e5,
          },
        }),
    ...(drawn.tilt === undefined ? {} : { initialTilt: { difference_mm: drawn.tilt, widestAt_deg: 40 } }),
  }));

/** Sequences of any order, any loads, one to four bolts at once. */
export function anyPasses(boltCount: number): fc.Arbitrary<readonly TighteningPass[]> {
  const bolts = fc.uniqueArray(fc.integer({ min: 1, max: boltCount }), { minLength: 1, maxLength: 4 });
  const step = fc
    .record({ bolts, load_percent: share(1, 150) })
    .map(({ bolts: together, load_percent }) => ({ bolts: together, load_percent }));
  const pass = fc.array(step, { minLength: 1, maxLength: 2 * boltCount }).map((steps) => ({ steps }));
  return fc.array(pass, { minLength: 1, maxLength: 3 });
}

/** A joint with a sequence and a target that brings its gasket somewhere on its curve. */
export const anyTightening = anyJoint.chain((drawn) =>
  fc
    .record({
      passes: anyPasses(drawn.boltCount),
      stress_MPa: logarithmic(2, 300),
      creep: fc.constantFrom(0, 0, 1e-4, 1e-3),
    })
    .map(({ passes, stress_MPa, creep }) => {
      const { contactInside_mm, contactOutside_mm } = drawn.gasket;
      const area = (Math.PI / 4) * (contactOutside_mm ** 2 - contactInside_mm ** 2);
      return {
        joint: drawn,
        target_N: (stress_MPa * area) / drawn.boltCount,
        passes,
        creep_mm3_per_N: creep,
      };
    }),
);
