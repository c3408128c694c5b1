import type {
  BoltingSpecification,
  CheckingLevel,
  ClampedPart,
  Criticality,
  GasketSpecification,
  JointKind,
  JointSpecification,
  JointWhereabouts,
  MakePurpose,
  ProofWay,
  Role,
  Stage,
  ToolSetting,
  WorkScope,
} from '@seatwell/contract';

/** A recorded event as the fold reads it: the event and its evidence, nothing else. */
export interface RecordedEvent {
  readonly eventId: string;
  readonly type: string;
  readonly v: number;
  readonly sequence: number;
  readonly jointId: string | null;
  readonly makeId: string | null;
  readonly payload: unknown;
  readonly evidence: Evidence;
  readonly accountId: string;
  readonly recordedByPersonId: string | null;
  readonly performedBy: readonly string[];
  /** ISO instants */
  readonly workTime: string;
  readonly recordedAt: string;
  readonly signed: boolean;
  /** codes of failed rules: the fact was kept and waits to be dealt with; empty = applied */
  readonly reviewCodes: readonly string[];
}

/** What the rules relied on, stored with the event: ids and hashes, and results that the server computed. */
export interface Evidence {
  readonly target?: TargetEvidence;
  readonly procedure?: ProcedureEvidence;
  readonly deviations?: readonly {
    readonly rule: string;
    readonly eventId: string;
  }[];
  readonly flags?: readonly string[];
  readonly calibrations?: readonly {
    readonly toolId: string;
    readonly calibrationId: string;
    readonly provisional: boolean;
  }[];
  readonly qualifications?: readonly {
    readonly personId: string;
    readonly qualificationId: string;
  }[];
  readonly talks?: readonly string[];
  readonly permits?: readonly string[];
  readonly packId?: string;
  readonly sampleDrawn?: boolean;
  readonly shiftEnd?: string;
  readonly lotKey?: string;
  /** hash of the photo of the paper form that the fact was entered from */
  readonly paperForm?: string;
  /** on the joint of the register that a found joint turned out to be */
  readonly merged?: MergedWork;
}

/** The work of a found joint, as the merge gives it to the joint of the register. */
export interface MergedWork {
  readonly jointId: string;
  readonly tag: string;
  readonly photo: string | null;
  /** the found joint's make that was worked on, and the register's make that it was; null when there was no work */
  readonly makeId: string | null;
  readonly intoMakeId: string | null;
  readonly events: readonly RecordedEvent[];
}

export interface ProcedureEvidence {
  readonly procedureId: string;
  readonly revision: number;
  readonly contentHash: string;
  readonly code: string;
  readonly numbering: 'clockwise' | 'order';
  readonly passCount: number;
  readonly finalRound: boolean;
  readonly relaxationPass: boolean;
  readonly method: string;
}

export interface TargetEvidence {
  readonly basis: 'calculated' | 'target-table' | 'makers-torque';
  /** hash of every input that the calculation used; another hash = target out of date */
  readonly inputsHash: string;
  readonly calcVersion: string;
  readonly insideWindow: boolean;
  readonly shortfallReason: string | null;
  readonly boltStress_MPa: number | null;
  readonly area: 'tensile' | 'root' | null;
  readonly boltLoad_N: number | null;
  readonly governedBy: string | null;
  readonly torque_Nm: number | null;
  readonly passes: readonly {
    readonly percent: number;
    readonly torque_Nm: number | null;
    readonly pressure_MPa: number | null;
    /** where the bolts are stretched to a length; absent otherwise */
    readonly elongation_mm?: number;
  }[];
  readonly gasketFamily: string;
  readonly boltGrade: string | null;
  readonly boltCondition: 'new' | 'reused' | 'either';
  readonly lubricant: string;
  readonly lubricantId: string | null;
  readonly gasketDataId?: string | null;
  readonly tableId?: string | null;
  readonly sources: readonly string[];
  /** how the engineer chose that it is tightened; without it, by the procedure */
  readonly tightening?: TighteningPlan | null;
  /** of a tensioner: what its pump is set to */
  readonly tensioning?: Tensioning | null;
  /** where the bolts are stretched to a length; absent otherwise */
  readonly elongation?: TargetElongation;
  /** what the procedure says that the bolts are; absent where it says nothing */
  readonly bolts?: TargetBolts;
  /** limits that the window does not hold, each with what nobody has said; absent in targets from before they were told */
  readonly notChecked?: readonly NotChecked[];
}

/** How far each bolt is stretched at the full target, and what that stands on. */
export interface TargetElongation {
  readonly elongation_mm: number;
  /** mid-nut to mid-nut: clamped parts, washers and one nut height */
  readonly effectiveLength_mm: number;
  readonly elasticModulus_MPa: number;
}

/** The bolts that a target was calculated for, beside grade and condition. */
export interface TargetBolts {
  /** null = bare */
  readonly coating: string | null;
  readonly washersPerBolt: 0 | 1 | 2;
}

/** A limit that was left out of a window, and what it would have needed. */
export interface NotChecked {
  readonly limit: UncheckedLimit;
  readonly missing: readonly MissingDatum[];
}

export const UNCHECKED_LIMITS = [
  'coating-temperature',
  'nut-bearing',
  'external-load',
  'thermal',
  'flange-strength',
  'flange-rotation',
  'gasket-test',
  'pass-partition-ribs',
] as const;
export type UncheckedLimit = (typeof UNCHECKED_LIMITS)[number];

export const MISSING_DATA = [
  'coating',
  'washers',
  'external-load',
  'temperatures',
  'bolt-material',
  'clamped-thickness',
  'flange-strength-data',
  'gasket-rotation-limit',
  'test-pressure',
  'rib-area',
] as const;
export type MissingDatum = (typeof MISSING_DATA)[number];

/** Pressures of a tensioner, group by group; `passes` of the target give that of the last group. */
export interface Tensioning {
  readonly toolId: string;
  readonly toolTag: string;
  readonly hydraulicArea_mm2: number;
  readonly gaugeDivision_MPa: number;
  readonly coverage: number;
  /** what each bolt keeps after the tool is let off */
  readonly residualLoad_N: number;
  readonly loadTransferFactor: number;
  readonly toolLoad_N: number;
  /** highest tool load of a group over the bolt's yield load */
  readonly utilisation: number;
  /** thread to stand out of the nut, about one diameter (common practice) */
  readonly protrusion_mm: number;
  /** clockwise places of the bolts of each group, in the order of tensioning */
  readonly groups: readonly (readonly number[])[];
  readonly passes: readonly { readonly percent: number; readonly groupPressures_MPa: readonly number[] }[];
  /** what the engineer was told about the pressures */
  readonly warnings: readonly string[];
}

/** The pattern of the procedure, or computed loads: every step with its own set value. */
export type TighteningPlan =
  | { readonly way: 'pattern'; readonly pattern: string }
  | {
      readonly way: 'computed-loads';
      readonly toolDivision_Nm: number;
      /** highest load of a step, percent of target, and the limit of the window that gives it */
      readonly cap_percent: number;
      readonly capGovernedBy: string;
      readonly passes: readonly ComputedPass[];
      /** simulated with the set values as rounded, percent of target */
      readonly final: { readonly min: number; readonly mean: number; readonly max: number };
      /** lowest and highest bolt with wrong gasket data and the tool's scatter, percent of target */
      readonly band: { readonly min: number; readonly max: number };
      /** largest difference of the gap across the flange on the way, and that of the procedure */
      readonly tilt_mm: number;
      readonly usualTilt_mm: number;
      readonly moves: number;
      readonly movesSaved: number;
      readonly passesSaved: number;
    };

export interface ComputedPass {
  readonly level_percent: number;
  /** rising */
  readonly setValues_Nm: readonly number[];
  /** one bolt after another, by place clockwise from 1, with the index of its set value */
  readonly steps: readonly { readonly bolt: number; readonly setValue: number }[];
}

export interface PassRecord {
  readonly eventId: string;
  readonly pass: number;
  readonly finished: boolean;
  readonly lastBolt: number | null;
  readonly boltsDone: number;
  readonly set: ToolSetting;
  readonly toolId: string;
  readonly performedBy: readonly string[];
  readonly startedAt: string;
  readonly endedAt: string;
  readonly why: string | null;
}

/** Where an interrupted joint stands: who left it, and where to start again. */
export interface PartTight {
  readonly pass: number;
  readonly lastBolt: number | null;
  readonly boltsDone: number;
  readonly leftAt: string;
  readonly leftBy: readonly string[];
  readonly why: string | null;
  /** the interrupted pass is repeated from its first bolt */
  readonly restartPass: number;
}

export interface Hold {
  readonly holdId: string;
  readonly reason: string;
  readonly releasedBy: Role;
  readonly placedBy: string | null;
  readonly placedAt: string;
}

export interface WaitingReview {
  readonly eventId: string;
  readonly type: string;
  readonly codes: readonly string[];
  readonly workTime: string;
  /** waits behind an earlier fact of the same make */
  readonly behind: string | null;
  /** what its place in the life of the make lacks; null = it fits and only has to be settled */
  readonly missing: string | null;
}

/** A system as the coordinator offers it: operations takes the same with the same exceptions, or not at all. */
export interface HandOverOffer {
  readonly systemId: string;
  readonly exceptions: readonly string[];
  readonly by: string | null;
  readonly at: string;
}

export interface MakeState {
  readonly makeId: string;
  readonly number: number;
  readonly purpose: MakePurpose;
  readonly workScope: WorkScope;
  readonly clampedParts: readonly ClampedPart[] | null;
  readonly gasket: GasketSpecification | null;
  readonly checkingLevel: CheckingLevel | null;
  readonly proof: ProofWay;
  readonly plannedOn: string | null;
  readonly crewId: string | null;
  readonly packs: readonly {
    readonly packId: string;
    readonly role: 'inside' | 'boundary' | 'reinstated';
  }[];
  readonly cancelled: boolean;

  readonly stage: Stage;
  readonly stageSince: string | null;
  readonly rejected: boolean;
  readonly leaking: boolean;
  /** it was proven, or leaked under pressure, and operations has not released the joint again since */
  readonly underPressure: boolean;
  /** leaked at some time in this make: asks for measured flatness when it is opened */
  readonly hasLeaked: boolean;
  readonly retighten: boolean;
  readonly provisionalTools: readonly string[];
  readonly implausible: readonly string[];
  readonly waiting: readonly WaitingReview[];
  readonly deviations: readonly {
    readonly rule: string;
    readonly reason: string;
    readonly eventId: string;
    readonly until: string | null;
  }[];

  readonly procedure: ProcedureEvidence | null;
  readonly target: TargetEvidence | null;
  readonly permitId: string | null;
  readonly openedAt: string | null;
  readonly openedBy: readonly string[];
  readonly facesAcceptedAt: string | null;
  readonly boltingCondition: 'new' | 'reused' | null;
  readonly fitted: {
    readonly gasketFamily: string;
    readonly gasketPurpose: MakePurpose;
    readonly gasketCount: number;
    readonly batch: string | null;
    readonly photo: string | null;
    readonly boltGrade: string;
    readonly temporaryBolts: boolean;
    readonly lubricant: string;
  } | null;
  readonly passes: readonly PassRecord[];
  /** number of the next pass to record, 1-based; passCount + 1 = the final round */
  readonly nextPass: number;
  readonly partTight: PartTight | null;
  readonly tightAt: string | null;
  readonly relaxationDone: boolean;
  readonly studsReplaced: readonly number[];
  /** everyone who nipped up or recorded a pass of this make: four eyes go by person */
  readonly workedBy: readonly string[];
  /** everyone who recorded nipping up or a pass, with or without having worked on it */
  readonly workRecordedBy: readonly string[];
  readonly toolsUsed: readonly string[];
  readonly sampleDrawn: boolean;
  readonly lotKey: string | null;
  readonly checkedBy: string | null;
  readonly checkedAt: string | null;
  readonly witnessed: readonly ('tightening' | 'test')[];
  readonly provenAt: string | null;
  readonly handedOverAt: string | null;
  /** what the coordinator offers to operations; absent in states from before there was an offer */
  readonly offered?: HandOverOffer | null;
  /** decisions that no longer stand on what they were signed over */
  readonly superseded: readonly { readonly eventId: string; readonly type: string }[];
  /** work time of the latest event folded into this make */
  readonly lastEventAt: string | null;
  readonly lastEventBy: readonly string[];
}

/** A found joint that was this one. */
export type FoundAs = Omit<MergedWork, 'events'>;

export interface JointState {
  readonly jointId: string;
  readonly placeId: string | null;
  readonly tag: string;
  readonly kind: JointKind;
  readonly criticality: Criticality;
  readonly whereabouts: JointWhereabouts;
  readonly specification: JointSpecification;
  readonly bolting: BoltingSpecification | null;
  readonly found: {
    readonly nearest: string;
    readonly photo: string | null;
  } | null;
  readonly voided: {
    readonly why: 'duplicate' | 'not-found' | 'welded-up' | 'not-opened' | 'merged';
    readonly reason: string;
    readonly intoJointId: string | null;
  } | null;
  readonly holds: readonly Hold[];
  readonly remark: string | null;
  /** found joints that were this one, with their temporary numbers; absent when there was none */
  readonly foundAs?: readonly FoundAs[];
  readonly makes: readonly MakeState[];
  /** number of events folded: what a decision must have seen */
  readonly version: number;
}
