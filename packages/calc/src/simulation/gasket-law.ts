/**
 * How a gasket answers compression: a virgin curve, and stiffer elastic recovery below the largest
 * compression reached.
 */
export interface GasketCurve {
  /** Thickness before tightening, mm. */
  readonly thickness_mm: number;
  /** Virgin curve after the origin: compression in mm, stress in MPa, both rising. */
  readonly points: readonly (readonly [compression_mm: number, stress_MPa: number])[];
  /** Recovery modulus at no stress, MPa. */
  readonly E0_MPa: number;
  /** Growth of the recovery modulus with the stress reached. */
  readonly K1: number;
  /** Pulls as well as pushes, without lift-off: for checks against closed algebra only. */
  readonly bonded?: boolean;
}

/** The curve in terms of closure, with the local compliance of the faces in series. */
export interface GasketLaw {
  readonly closure: Float64Array;
  readonly stress: Float64Array;
  readonly slope: Float64Array;
  readonly curveSlope: Float64Array;
  readonly faceCompliance: number;
  readonly recoveryAtRest: number;
  readonly recoveryGrowth: number;
  readonly bonded: boolean;
  readonly lastStress_MPa: number;
}

/**
 * Prepares a gasket curve for the solver.
 *
 * @param curve virgin curve and recovery
 * @param faceCompliance_mm3_per_N indentation of both faces, mm per MPa
 * @param compressionFactor scales the compression of the virgin curve, for the band of uncertainty
 * @returns piecewise-linear law in closure
 */
export function gasketLaw(curve: GasketCurve, faceCompliance_mm3_per_N: number, compressionFactor = 1): GasketLaw {
  const knots = [[0, 0] as const, ...curve.points];
  const count = knots.length - 1;
  const law = {
    closure: new Float64Array(count + 1),
    stress: new Float64Array(count + 1),
    slope: new Float64Array(count),
    curveSlope: new Float64Array(count),
    faceCompliance: faceCompliance_mm3_per_N,
    recoveryAtRest: curve.E0_MPa / curve.thickness_mm,
    recoveryGrowth: curve.K1 / curve.thickness_mm,
    bonded: curve.bonded === true,
    lastStress_MPa: knots[count]![1],
  };
  for (let k = 0; k <= count; k++) {
    const [compression, stress] = knots[k]!;
    law.stress[k] = stress;
    law.closure[k] = compression * compressionFactor + faceCompliance_mm3_per_N * stress;
    if (k === 0) continue;
    const previous = knots[k - 1]!;
    const slope = (stress - previous[1]) / ((compression - previous[0]) * compressionFactor);
    law.curveSlope[k - 1] = slope;
    law.slope[k - 1] = slope / (1 + faceCompliance_mm3_per_N * slope);
  }
  return law;
}

/** Segment of the virgin curve on which a closure lies; beyond the last point the last slope goes on. */
export function segmentOf(law: GasketLaw, closure: number, from = 0): number {
  let segment = from;
  const last = law.slope.length - 1;
  while (segment < last && closure > law.closure[segment + 1]!) segment++;
  return segment;
}

/** Virgin stress at a closure on a known segment, MPa. */
export function virginStress(law: GasketLaw, closure: number, segment: number): number {
  return law.stress[segment]! + law.slope[segment]! * (closure - law.closure[segment]!);
}

/**
 * Recovery stiffness in closure, MPa/mm, once a point has reached a stress: the largest of the modulus of
 * recovery, the slope of the virgin curve there and the secant, with the faces in series.
 */
export function recoveryStiffness(law: GasketLaw, closure: number, stress: number, segment: number): number {
  const compression = closure - law.faceCompliance * stress;
  const secant = compression > 0 ? stress / compression : 0;
  const gasket = Math.max(law.recoveryAtRest + law.recoveryGrowth * stress, law.curveSlope[segment]!, secant);
  return gasket / (1 + law.faceCompliance * gasket);
}

/** Closure of an even stress on the virgin curve, mm: inverse of `virginStress`. */
export function virginClosure(law: GasketLaw, stress_MPa: number): number {
  let segment = 0;
  while (segment < law.slope.length - 1 && stress_MPa > law.stress[segment + 1]!) segment++;
  return law.closure[segment]! + (stress_MPa - law.stress[segment]!) / law.slope[segment]!;
}
