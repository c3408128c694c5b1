import type { Lubricant } from '../torque/friction.ts';
import type { HydraulicWrench } from '../torque/hydraulic-pressure.ts';
import type { Explainable, Warning } from '../working.ts';
import type { TighteningMethod } from './methods.ts';

export interface StandardFlangeInput {
  readonly standard: string;
  readonly size: string;
  readonly rating: string;
  readonly boltCount?: number;
  /** Highest assembly stress of the flange and who says so, if known. */
  readonly maximumBoltStress_MPa?: number;
  readonly maximumBoltStressSource?: string;
}

export interface CustomFlangeInput {
  readonly custom: {
    readonly boltCount: number;
    readonly boltThread: string;
    readonly boltCircle_mm?: number;
    readonly boltHole_mm?: number;
    readonly thickness_mm?: number;
  };
  readonly maximumBoltStress_MPa?: number;
  readonly maximumBoltStressSource?: string;
}

export interface GasketLimits {
  readonly seating_MPa: number;
  readonly operating_MPa: number;
  readonly target_MPa: number;
  readonly maximum_MPa: number;
  readonly source: string;
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
  };
  readonly service: {
    readonly pressure_MPa: number;
    readonly temperature_C: number;
    readonly testPressure_MPa?: number;
    /** External pull on the joint in operation, N. */
    readonly axialForce_N?: number;
    /** External bending moment in operation, N·m. */
    readonly moment_Nm?: number;
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
  /** Shown, but does not bound the target (code loads of a flange rated by its standard). */
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
    readonly acrossFlats_mm?: number;
  };
  readonly passes: readonly {
    readonly percent: number;
    readonly torque_Nm?: number;
    readonly pressure_MPa?: number;
    readonly elongation_mm?: number;
  }[];
}
