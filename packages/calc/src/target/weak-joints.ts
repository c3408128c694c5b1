import { boltingGrade } from '../bolting/bolting-grade.ts';
import { POSITIVE, requireInRange } from '../checks.ts';
import { findFlange, listFlangeRatings, listFlangeSizes } from '../flanges/find-flange.ts';
import { gasketDimensions } from '../gaskets/gasket-data.ts';
import { CalcRefusal } from '../refusal.ts';
import { areasOf } from '../threads/geometry.ts';

export interface WeakJoint {
  readonly size: string;
  readonly rating: string;
  /** Gasket stress over the full contact width at the given bolt stress. */
  readonly gasketStress_MPa: number;
  /** Bolt stress that would reach the wanted gasket stress. */
  readonly neededBoltStress_MPa: number;
  /** Needed stress over yield, both on the root area. */
  readonly neededShareOfYield: number;
}

/**
 * Standard joints whose bolts, at a stress on the root area, do not bring the gasket to a wanted stress.
 *
 * Source: computed from the tables: σg = Sb·Ar·nb/Ag over the full contact width.
 * @param input.standard standard of the flanges
 * @param input.family spiral wound or a sheet family (with dimensions in the tables)
 * @param input.boltStress_MPa on the root area, 345 MPa (50 ksi) in the trade's charts
 * @param input.gasketStress_MPa wanted, 69 MPa (10 000 psi) for spiral wound in many procedures
 */
export function weakStandardJoints(input: {
  readonly standard: string;
  readonly family: string;
  readonly boltStress_MPa: number;
  readonly gasketStress_MPa: number;
  readonly grade: string;
}): readonly WeakJoint[] {
  requireInRange([
    ['boltStress_MPa', input.boltStress_MPa, POSITIVE],
    ['gasketStress_MPa', input.gasketStress_MPa, POSITIVE],
  ]);
  const weak: WeakJoint[] = [];
  for (const size of listFlangeSizes(input.standard)) {
    for (const rating of listFlangeRatings(input.standard, size)) {
      const joint = jointOf({ ...input, size, rating });
      if (joint === undefined) continue;
      const { gasketArea_mm2, boltArea_mm2, yield_MPa } = joint;
      const gasketStress_MPa = (input.boltStress_MPa * boltArea_mm2) / gasketArea_mm2;
      if (gasketStress_MPa >= input.gasketStress_MPa) continue;
      const needed_MPa = (input.gasketStress_MPa * gasketArea_mm2) / boltArea_mm2;
      weak.push({
        size,
        rating,
        gasketStress_MPa,
        neededBoltStress_MPa: needed_MPa,
        neededShareOfYield: needed_MPa / yield_MPa,
      });
    }
  }
  return weak;
}

/** Areas of one joint; joints without data (thickness, gasket) are left out of the list. */
function jointOf(key: {
  readonly standard: string;
  readonly size: string;
  readonly rating: string;
  readonly family: string;
  readonly grade: string;
}) {
  try {
    const flange = findFlange(key.size === 'DN65' ? { ...key, boltCount: 8 } : key);
    const gasket = gasketDimensions(key);
    return {
      boltArea_mm2: areasOf(flange.boltThread).rootArea_mm2 * flange.boltCount,
      gasketArea_mm2: (Math.PI / 4) * (gasket.contactOutside_mm ** 2 - gasket.contactInside_mm ** 2),
      yield_MPa: boltingGrade({ grade: key.grade, thread: flange.boltThread }).yield_MPa,
    };
  } catch (error) {
    if (error instanceof CalcRefusal) return undefined;
    throw error;
  }
}
