import { NOT_NEGATIVE, POSITIVE, requireInRange } from '../checks.ts';
import { refuse } from '../refusal.ts';
import type { Explainable, Explained } from '../working.ts';

export interface FlangeStressRequest extends Explainable {
  readonly kind: 'integral' | 'loose';
  readonly outsideDiameter_mm: number;
  readonly insideDiameter_mm: number;
  readonly boltCircle_mm: number;
  readonly thickness_mm: number;
  /** Length, thin and thick end of the hub; required for integral, optional for loose. */
  readonly hub?: {
    readonly length_mm: number;
    readonly smallThickness_mm: number;
    readonly largeThickness_mm: number;
  };
  readonly loads: {
    /** G, diameter of the gasket reaction. */
    readonly reactionDiameter_mm: number;
    /** Pressure in operation, with external force and moment in it if any. */
    readonly equivalentPressure_MPa: number;
    /** Wm1. */
    readonly operatingBoltLoad_N: number;
    /** W, the seating design load. */
    readonly seatingDesignLoad_N: number;
  };
  readonly allowables: {
    readonly flangeOperating_MPa: number;
    readonly flangeSeating_MPa: number;
    /** At temperature, for the rigidity index. */
    readonly elasticModulusOperating_MPa: number;
    readonly elasticModulusSeating_MPa: number;
  };
}

export interface FlangeStressState {
  readonly longitudinalHub_MPa: number;
  readonly radial_MPa: number;
  readonly tangential_MPa: number;
  readonly rigidityJ: number;
  readonly ok: boolean;
}

export interface FlangeStress extends Explained {
  readonly K: number;
  readonly T: number;
  readonly U: number;
  readonly Y: number;
  readonly Z: number;
  readonly F?: number;
  readonly V?: number;
  readonly f?: number;
  readonly e?: number;
  readonly d?: number;
  readonly L?: number;
  readonly momentOperating_Nm: number;
  readonly momentSeating_Nm: number;
  /** Largest of operation and seating; both stand below. */
  readonly longitudinalHub_MPa: number;
  readonly radial_MPa: number;
  readonly tangential_MPa: number;
  readonly rigidityJ: number;
  readonly ok: boolean;
  readonly operating: FlangeStressState;
  readonly seating: FlangeStressState;
}

/**
 * Refuses dimensions and loads that make no flange.
 * @throws CalcRefusal `out-of-range`, `flange-impossible`, `gasket-impossible`, `hub-must-be-given`, `hub-impossible`
 */
export function checkFlangeStress(input: FlangeStressRequest): void {
  const { hub, loads, allowables } = input;
  requireInRange([
    ['outsideDiameter_mm', input.outsideDiameter_mm, POSITIVE],
    ['insideDiameter_mm', input.insideDiameter_mm, POSITIVE],
    ['boltCircle_mm', input.boltCircle_mm, POSITIVE],
    ['thickness_mm', input.thickness_mm, POSITIVE],
    ['hub.length_mm', hub?.length_mm, POSITIVE],
    ['hub.smallThickness_mm', hub?.smallThickness_mm, POSITIVE],
    ['hub.largeThickness_mm', hub?.largeThickness_mm, POSITIVE],
    ['loads.reactionDiameter_mm', loads.reactionDiameter_mm, POSITIVE],
    ['loads.equivalentPressure_MPa', loads.equivalentPressure_MPa, NOT_NEGATIVE],
    ['loads.operatingBoltLoad_N', loads.operatingBoltLoad_N, NOT_NEGATIVE],
    ['loads.seatingDesignLoad_N', loads.seatingDesignLoad_N, NOT_NEGATIVE],
    ['allowables.flangeOperating_MPa', allowables.flangeOperating_MPa, POSITIVE],
    ['allowables.flangeSeating_MPa', allowables.flangeSeating_MPa, POSITIVE],
    ['allowables.elasticModulusOperating_MPa', allowables.elasticModulusOperating_MPa, POSITIVE],
    ['allowables.elasticModulusSeating_MPa', allowables.elasticModulusSeating_MPa, POSITIVE],
  ]);
  const { outsideDiameter_mm: A, insideDiameter_mm: B, boltCircle_mm: C } = input;
  if (!(B < C && C < A)) {
    refuse(
      'boltCircle_mm',
      'flange-impossible',
      `Inside ${B}, bolt circle ${C} and outside ${A} mm must rise in this order. Check the diameters.`,
    );
  }
  if (!(loads.reactionDiameter_mm > B && loads.reactionDiameter_mm < C)) {
    refuse(
      'loads.reactionDiameter_mm',
      'gasket-impossible',
      `The gasket reaction at ${loads.reactionDiameter_mm} mm must lie between inside ${B} and bolt circle ${C} mm.`,
    );
  }
  if (input.kind === 'integral' && hub === undefined) {
    refuse(
      'hub',
      'hub-must-be-given',
      'An integral flange needs its hub: length_mm, smallThickness_mm, largeThickness_mm.',
    );
  }
  if (hub !== undefined && hub.largeThickness_mm < hub.smallThickness_mm) {
    refuse(
      'hub.largeThickness_mm',
      'hub-impossible',
      `The hub is ${hub.largeThickness_mm} mm at the flange and ${hub.smallThickness_mm} mm at the weld. The first cannot be smaller.`,
      hub.smallThickness_mm,
    );
  }
}
