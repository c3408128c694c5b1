import type { RetighteningRule } from '../gaskets/retightening.ts';
import type { Lubricant } from '../torque/friction.ts';
import type { HydraulicWrench } from '../torque/hydraulic-pressure.ts';
import type { Explainable, Warning } from '../working.ts';
import type { FlangeStressAtTarget } from './flange-at-target.ts';
import type { TighteningMethod } from './methods.ts';

/**
 * Dimensions and allowables for the flange stresses of the code. What a standard flange leaves out comes from the
 * tables of its standard and hub; a custom flange gives all of them.
 */
export interface FlangeStrengthInput {
  readonly kind: 'integral' | 'loose';
  readonly outsideDiameter_mm?: number;
  readonly insideDiameter_mm?: number;
  readonly boltCircle_mm?: number;
  readonly thickness_mm?: number;
  readonly hub?: {
    readonly length_mm: number;
    readonly smallThickness_mm: number;
    readonly largeThickness_mm: number;
  };
  readonly allowableAmbient_MPa: number;
  readonly allowableOperating_MPa: number;
  readonly elasticModulusAmbient_MPa: number;
  readonly elasticModulusOperating_MPa: number;
  /** Where material and allowables are from. */
  readonly source: string;
}

/** How far the gasket lets one flange rotate; no limit is published, so it is entered. */
export interface FlangeRotationInput {
  /** Highest rotation of one flange that the gasket bears, degrees. */
  readonly gasketLimit_deg: number;
  /** Rotation of one flange at `maximumBoltStress_MPa`, degrees; otherwise from the rigidity of `strength`. */
  readonly flangeAtMaximum_deg?: number;
  readonly source: string;
}

interface FlangeLimitsInput {
  /** Highest assembly stress of the flange and who says so, if known. */
  readonly maximumBoltStress_MPa?: number;
  readonly maximumBoltStressSource?: string;
  readonly strength?: FlangeStrengthInput;
  readonly rotation?: FlangeRotationInput;
}

export interface StandardFlangeInput extends FlangeLimitsInput {
  readonly standard: string;
  readonly size: string;
  readonly rating: string;
  readonly boltCount?: number;
}

export interface CustomFlangeInput extends FlangeLimitsInput {
  readonly custom: {
    readonly boltCount: number;
    readonly boltThread: string;
    readonly boltCircle_mm?: number;
    readonly boltHole_mm?: number;
    readonly thickness_mm?: number;
  };
}

export interface GasketLimits {
  readonly seating_MPa: number;
  readonly operating_MPa: number;
  readonly target_MPa: number;
  readonly maximum_MPa: number;
  readonly source: string;
}

/** Hardened washers under the nuts. What is not given comes from the table, which is from memory. */
export interface WashersInput {
  readonly perBolt: 1 | 2;
  readonly outsideDiameter_mm?: number;
  readonly insideDiameter_mm?: number;
  readonly thickness_mm?: number;
}

/** A state in which bolts and flanges have different temperatures. */
export interface ThermalState {
  readonly name: string;
  readonly boltTemperature_C: number;
  readonly flangeTemperature_C: number;
}

/** What turns a temperature difference between bolts and flanges into bolt load. */
export interface ThermalInput {
  readonly assemblyTemperature_C: number;
  readonly states: readonly ThermalState[];
  /** Coefficients of linear expansion, 1/K. */
  readonly boltExpansion_perK: number;
  readonly flangeExpansion_perK: number;
  readonly source: string;
  /** Axial stiffness of the clamped parts; without it they are taken as rigid, which is conservative. */
  readonly stiffness?: {
    readonly flanges_N_per_mm: number;
    readonly gaskets_N_per_mm: number;
    readonly source: string;
  };
}

export interface TargetRequest extends Explainable {
  readonly flange: StandardFlangeInput | CustomFlangeInput;
  /** What the bolts clamp between the nuts; its thicknesses make the grip. */
  readonly clampedParts?: readonly { readonly kind: string; readonly thickness_mm: number }[];
  readonly gasket: {
    readonly family: string;
    readonly contactOutside_mm: number;
    readonly contactInside_mm: number;
    /** Gaskets in the stack, one on another: each carries the whole load. */
    readonly count?: number;
    readonly limits?: GasketLimits;
    /** Area of pass-partition ribs, added to the ring. */
    readonly ribArea_mm2?: number;
    /** m and y for the code's advisory loads; otherwise from the code table where the family has one row. */
    readonly codeFactors?: { readonly m: number; readonly y_MPa: number; readonly source: string };
  };
  readonly bolting: {
    readonly thread?: string;
    readonly count?: number;
    readonly grade: string;
    readonly condition: 'new' | 'reused' | 'coated';
    /** For grades without a table row, with its source. */
    readonly yield_MPa?: number;
    readonly yieldSource?: string;
    readonly elasticModulus_MPa?: number;
    /** Nut that goes on the stud, `2H` or `A194 2HM`: refused where the grade does not go with it. */
    readonly nut?: string;
    /** Coating or plating, with the temperature that its maker allows where the common one does not hold. */
    readonly coating?: string;
    readonly coatingMaximum_C?: number;
    readonly coatingSource?: string;
    readonly washers?: WashersInput;
  };
  readonly service: {
    readonly pressure_MPa: number;
    readonly temperature_C: number;
    readonly testPressure_MPa?: number;
    /** External pull on the joint in operation, N. */
    readonly axialForce_N?: number;
    /** External bending moment in operation, N·m. */
    readonly moment_Nm?: number;
    /** Bolts and flanges at different temperatures: start-up, upset, rain. */
    readonly thermal?: ThermalInput;
  };
  readonly lubricant: Lubricant;
  readonly method: TighteningMethod;
  /** Area that every bolt stress of the answer stands on. */
  readonly area: 'tensile' | 'root';
  readonly policy: {
    /** Shares of ambient yield. */
    readonly minimumBoltUtilisation: number;
    readonly maximumBoltUtilisation: number;
    readonly scatter_percent?: number;
    /** Share of the gasket load left after relaxation; 0.7 if not given (PCC-1, from memory). */
    readonly remainingShare?: number;
  };
  readonly target?: { readonly boltStress_MPa: number };
  readonly tool?: {
    readonly wrench?: HydraulicWrench;
    readonly hydraulicArea_mm2?: number;
  };
  readonly passPercents?: readonly number[];
}

/** A limit of the window, on the area of the request. */
export interface WindowLimit {
  readonly name: string;
  readonly boltStress_MPa: number;
  readonly area: 'tensile' | 'root';
  /** `full` contact width or the code's `effective` width, where a gasket is behind the limit. */
  readonly gasketWidth?: 'full' | 'effective';
  /** Shown, but does not bound the target (code loads and stresses of a flange rated by its standard). */
  readonly advisory?: true;
  /** The tool's scatter is already in the limit. */
  readonly scatterIncluded?: true;
  readonly source: string;
}

export interface TargetAnswer {
  readonly window: {
    readonly open: boolean;
    readonly lower: readonly WindowLimit[];
    readonly upper: readonly WindowLimit[];
    readonly shortfall_MPa?: number;
    readonly remedies?: readonly Warning[];
  };
  readonly target: {
    readonly boltStress_MPa: number;
    readonly area: 'tensile' | 'root';
    readonly boltLoad_N: number;
    readonly gasketStress_MPa: number;
    readonly governedBy: string;
  };
  readonly spread: { readonly low_MPa: number; readonly high_MPa: number; readonly insideWindow: boolean };
  readonly tool: {
    readonly torque_Nm?: number;
    readonly pressure_MPa?: number;
    readonly resultingTorque_Nm?: number;
    readonly toolLoad_N?: number;
    readonly elongation_mm?: number;
    /** Mid-nut to mid-nut, over which the elongation is. */
    readonly effectiveLength_mm?: number;
    readonly acrossFlats_mm?: number;
  };
  readonly passes: readonly {
    readonly percent: number;
    readonly torque_Nm?: number;
    readonly pressure_MPa?: number;
    readonly elongation_mm?: number;
  }[];
  /** Stresses, rigidity and rotation of one flange at the target; only with `flange.strength`. */
  readonly flangeStress?: readonly FlangeStressAtTarget[];
  /** What may be done to the joint later, by the family of its gasket. */
  readonly retightening: RetighteningRule;
}
