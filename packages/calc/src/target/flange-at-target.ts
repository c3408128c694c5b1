import type { FlangeStressState } from '../code-loads/flange-stress-request.ts';
import { show, type WorkingStep } from '../working.ts';

/** One flange at the target, in one of the cases that it must bear. */
export interface FlangeStressAtTarget extends FlangeStressState {
  readonly case: 'assembly' | 'operating' | 'test';
  /** Elastic rotation of one flange, from the rigidity index. */
  readonly rotation_deg: number;
}

/** Bolt stress at which the stresses are computed; everything is linear in the moment from there. */
export const REFERENCE_MPA = 100;

export interface LoadCase {
  readonly name: FlangeStressAtTarget['case'];
  /** Moment without any bolt load: of pressure, external force and moment on the flange. */
  readonly ownMoment_Nm: number;
  readonly atReference: FlangeStressState;
  readonly allowable_MPa: number;
}

/** Highest share of an allowable that the stresses of the code take (2-8); a share of 1 is just allowed. */
export function stressShare(state: FlangeStressState, allowable_MPa: number): number {
  const { longitudinalHub_MPa: hub, radial_MPa: radial, tangential_MPa: tangential } = state;
  return Math.max(hub / 1.5, radial, tangential, (hub + radial) / 2, (hub + tangential) / 2) / allowable_MPa;
}

/**
 * Stresses, rigidity and rotation of one flange under the target, in one case.
 * Formula: each goes with the moment, so the value at the reference times Sb/Sref + M0/Mref.
 */
export function flangeAtTarget(
  { name, ownMoment_Nm, atReference, allowable_MPa }: LoadCase,
  at: {
    readonly boltStress_MPa: number;
    readonly reference_Nm: number;
    readonly rigidity_deg: number;
    readonly source: string;
  },
  steps: WorkingStep[] | undefined,
): FlangeStressAtTarget {
  const factor = at.boltStress_MPa / REFERENCE_MPA + ownMoment_Nm / at.reference_Nm;
  const step = (symbol: string, meaning: string, reference: number, unit: string) => {
    const value = reference * factor;
    steps?.push({
      symbol,
      meaning: `${meaning} at the target, ${name}`,
      formula: `${symbol}ref·(Sb/Sref + M0/Mref)`,
      substituted: `${show(reference)} × (${show(at.boltStress_MPa)} / ${REFERENCE_MPA} + ${show(ownMoment_Nm)} / ${show(at.reference_Nm)})`,
      value,
      unit,
      source: at.source,
    });
    return value;
  };
  const rigidityJ = step('J', 'rigidity index', atReference.rigidityJ, '');
  return {
    case: name,
    longitudinalHub_MPa: step('SH', 'longitudinal hub stress', atReference.longitudinalHub_MPa, 'MPa'),
    radial_MPa: step('SR', 'radial stress', atReference.radial_MPa, 'MPa'),
    tangential_MPa: step('ST', 'tangential stress', atReference.tangential_MPa, 'MPa'),
    rigidityJ,
    rotation_deg: step('φ', 'elastic rotation of one flange', atReference.rigidityJ * at.rigidity_deg, '°'),
    ok: stressShare(atReference, allowable_MPa) * factor <= 1 && rigidityJ <= 1,
  };
}
