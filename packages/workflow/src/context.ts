import type { ProcedureContent, QualifiedFor, Role, ShutdownSettings } from '@seatwell/contract';
import type { JointState, MakeState, TargetEvidence } from './state.ts';

export interface PersonFacts {
  readonly personId: string;
  readonly name: string;
  readonly company: string;
  readonly crewIds: readonly string[];
  readonly qualifications: readonly {
    readonly qualificationId: string;
    readonly qualifiedFor: readonly QualifiedFor[];
    readonly validFrom: string;
    readonly validThrough: string;
    readonly withdrawn: boolean;
  }[];
}

export interface ToolFacts {
  readonly toolId: string;
  readonly tag: string;
  readonly kind: string;
  readonly scaleMinimum: number | null;
  readonly scaleMaximum: number;
  readonly scaleUnit: 'N·m' | 'MPa' | 'mm';
  /** of a tensioner */
  readonly hydraulicArea_mm2?: number | null;
  readonly failedOn: string | null;
  readonly calibrations: readonly {
    readonly calibrationId: string;
    readonly calibratedOn: string;
    readonly validThrough: string;
    readonly provisional: boolean;
    readonly clearedAt: string | null;
    readonly hasCertificate: boolean;
    readonly recordedAt: string;
  }[];
}

export interface ProcedureFacts {
  readonly procedureId: string;
  readonly revision: number;
  readonly code: string;
  readonly approved: boolean;
  readonly superseded: boolean;
  readonly content: ProcedureContent;
}

export interface TalkFacts {
  readonly talkId: string;
  readonly procedureId: string;
  readonly revision: number;
  readonly heldAt: string;
  readonly attendees: readonly string[];
}

export interface PermitFacts {
  readonly permitId: string;
  readonly number: string;
  readonly isolationReference: string | null;
  readonly jointIds: readonly string[];
  readonly validFrom: string;
  readonly validUntil: string;
  readonly withdrawn: boolean;
}

export interface PackFacts {
  readonly packId: string;
  readonly number: string;
  readonly pressure_MPa: number;
  readonly hold_min: number;
  readonly way: string;
  readonly released: {
    readonly boundaryWalked: boolean;
    readonly blindsRated: boolean;
    readonly reliefValvesOut: boolean;
    readonly metalTemperature_C: number;
    readonly gaugeIds: readonly string[];
  } | null;
  /** joints of the pack whose relaxation pass is still due, by tag */
  readonly relaxationDue: readonly string[];
  /** unclosed A items of the pack and its joints, by text */
  readonly unclosedA: readonly string[];
  /** joints of the pack made tight with a provisional tool that is not cleared, by tag */
  readonly provisionalTools: readonly string[];
  readonly readings: readonly {
    readonly readAt: string;
    readonly pressure_MPa: number;
    readonly held_min: number;
    readonly gaugeIds: readonly string[];
    readonly results: readonly {
      readonly makeId: string;
      readonly result: 'no-leak' | 'leak';
    }[];
  }[];
}

export interface SystemFacts {
  readonly systemId: string;
  readonly code: string;
  /** tags of joints of the system that are neither proven, handed over, voided nor without work */
  readonly notProven: readonly string[];
  readonly temporaryBlindsIn: readonly string[];
  /** tags of joints with a temporary gasket or temporary bolts still in */
  readonly temporaryFittings: readonly string[];
  readonly unclosedA: readonly string[];
  readonly unclosedB: readonly string[];
}

/** Everything a rule may look at. The server gathers it under its locks; the web app from what it last read. */
export interface RuleContext {
  /** when the work was done (facts) or is decided (decisions): ISO instant */
  readonly workTime: string;
  /** the calendar day of workTime and of the end of its shift, in the site's zone */
  readonly workDay: string;
  readonly shiftEndDay: string;
  readonly shiftEnd: string;
  /** true when the last event of the make and workTime are not in the same shift */
  readonly leftOvernight: boolean;
  readonly joint: JointState;
  readonly make: MakeState;
  readonly settings: ShutdownSettings;
  readonly performedBy: readonly string[];
  readonly signerPersonId: string | null;
  readonly signed: boolean;
  readonly actorRoles: readonly Role[];
  readonly persons: Readonly<Record<string, PersonFacts>>;
  readonly tools: Readonly<Record<string, ToolFacts>>;
  readonly procedure: ProcedureFacts | null;
  readonly talks: readonly TalkFacts[];
  readonly permits: readonly PermitFacts[];
  readonly pack: PackFacts | null;
  readonly system: SystemFacts | null;
  /** the target that this command would store (target-approved), computed by the server */
  readonly newTarget: TargetEvidence | null;
  readonly shortfallAccepted: boolean;
  /** bolts that the procedure's pattern visits in the pass of this event; null = every bolt */
  readonly boltsInPass: number | null;
  /** radial width that the gasket of the make covers, from the register or the table of its standard; null = not known */
  readonly seatingWidth_mm: number | null;
  /** passes of the performers on other joints that overlap this one: joint tags */
  readonly elsewhereAtTheSameTime: readonly string[];
  /** joints of the same lot (pack, crew, procedure, shift) with a rejected check, by tag */
  readonly lotRejections: readonly string[];
  /** whether QC has checked any make of the lot; null = nobody asked */
  readonly lotSampled: boolean | null;
  readonly unclosedPunchA: number;
  /** the joint that a found joint is merged with, and its make to work on; null = there is none with this id */
  readonly mergeInto?: { readonly joint: JointState; readonly make: MakeState | null } | null;
  /** the event that a correction, revocation or settlement names; null = there is none with this id */
  readonly named?: NamedEvent | null;
}

/** What the rules of a pack look at (pack-released): the pack itself is in `pack`. */
export type PackContext = Pick<
  RuleContext,
  'workTime' | 'workDay' | 'shiftEndDay' | 'settings' | 'tools' | 'pack' | 'signed' | 'actorRoles'
>;

/** The event that a correction, revocation or settlement names. */
export interface NamedEvent {
  readonly eventId: string;
  readonly type: string;
  readonly payload: unknown;
  readonly makeId: string | null;
  readonly performedBy: readonly string[];
  readonly revoked: boolean;
  /** a fact in review that nobody has settled */
  readonly inReview: boolean;
}

/** What the rules are asked about. */
export interface RuleQuestion {
  readonly type: string;
  readonly payload: unknown;
}
