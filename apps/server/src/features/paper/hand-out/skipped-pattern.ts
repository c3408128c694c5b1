import {
  CalcRefusal,
  clockwiseRound,
  findRing,
  GASKET_CURVES,
  listRings,
  passesOf,
  simulateTightening,
  standardJoint,
  type TighteningPass,
} from '@seatwell/calc';
import type { ProcedureContent } from '@seatwell/contract';

/** Bolt loads of a flange tightened round and round in one go, and by the procedure; percent of target, clockwise. */
export interface SkippedPattern {
  readonly standard: string;
  readonly size: string;
  readonly rating: string;
  readonly family: string;
  readonly boltStress_MPa: number;
  readonly skipped: readonly number[];
  readonly kept: readonly number[];
}

/** Bolts below this share of target stand out: they are the ones that leak. */
export const LOW_PERCENT = 70;
/** Bolt stress of the picture where the procedure names none (common practice). */
const USUAL_STRESS_MPA = 345;
const STANDARDS = ['ASME-B16.5', 'EN-1092-1', 'ASME-B16.47-A'] as const;
const USUAL_RATINGS = ['300', '150', '600', 'PN40', 'PN16'];
const LEAST_BOLTS = 8;

/** A flange of the bolt count that the procedure is for; undefined where the tables have none. */
function flangeOf(bolts: number, { ratings }: ProcedureContent['appliesTo']) {
  const wanted = ratings.length > 0 ? ratings : USUAL_RATINGS;
  for (const standard of STANDARDS)
    for (const rating of wanted)
      for (const { size, kind, ...key } of listRings(standard)) {
        if (kind !== 'weld-neck-pair' || key.rating !== rating) continue;
        const ring = findRing({ standard, size, rating }, kind);
        if (ring?.boltCount === bolts) return { standard, size, rating, ring };
      }
  return undefined;
}

/**
 * What happens to a flange of the procedure when its pattern is skipped: one clockwise round at full load against the
 * passes and the final round. The same simulation as the engineer's.
 * @returns null where no flange of that bolt count is in the tables, or four bolts, which are too stiff to tell apart
 */
export function skippedPattern(content: ProcedureContent, bolts: number): SkippedPattern | null {
  const { appliesTo, policy, pattern, tools, group, passPercents } = content;
  const flange = bolts < LEAST_BOLTS ? undefined : flangeOf(bolts, appliesTo);
  if (!flange) return null;
  const families = appliesTo.gasketFamilies.filter((each) => Object.hasOwn(GASKET_CURVES, each));
  const family = families[0] ?? 'spiral-wound';
  const boltStress_MPa = policy.targetBoltStress_MPa ?? USUAL_STRESS_MPA;
  try {
    const { standard, size, rating, ring } = flange;
    const { joint, tensileArea_mm2, rootArea_mm2 } = standardJoint({
      standard,
      size,
      rating,
      boltCount: bolts,
      kind: 'weld-neck-pair',
      // The contact that the ring was fitted with: no table has one for every family.
      gasket: { family, contactInside_mm: ring.gasketInside_mm, contactOutside_mm: ring.gasketOutside_mm },
    });
    const target_N = boltStress_MPa * (policy.area === 'tensile' ? tensileArea_mm2 : rootArea_mm2);
    const loadsOf = (passes: readonly TighteningPass[]) =>
      simulateTightening({ joint, target_N, passes, record: 'none' }).loads_percent;
    const choice = { pattern, passPercents, ...(tools > 1 ? { tools } : {}), ...(group && group > 1 ? { group } : {}) };
    return {
      standard,
      size,
      rating,
      family,
      boltStress_MPa,
      skipped: loadsOf([{ percent: 100, steps: clockwiseRound(bolts) }]),
      kept: loadsOf(passesOf(choice, bolts)),
    };
  } catch (error) {
    // The talk goes on without the picture; everything else on the hand-out stands by itself.
    if (error instanceof CalcRefusal) return null;
    throw error;
  }
}
