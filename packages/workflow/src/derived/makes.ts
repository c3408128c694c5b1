import type { CheckingLevel, GasketSpecification, ShutdownSettings } from '@seatwell/contract';
import { hasReached, passesStage } from '../stages.ts';
import type { JointState, MakeState } from '../state.ts';

const LEVELS: readonly CheckingLevel[] = ['self', 'chargehand', 'sample', 'every', 'witness'];

/** Position of a level of checking; a higher one serves for a lower one. */
export const levelRank = (level: CheckingLevel): number => LEVELS.indexOf(level);

/** The level that a make is checked at: what the criticality demands, or more where the make raises it. */
export function demandedLevel(joint: JointState, make: MakeState, settings: ShutdownSettings): CheckingLevel {
  const least = settings.criticalities[joint.criticality].checkingLevel;
  return make.checkingLevel && levelRank(make.checkingLevel) > levelRank(least) ? make.checkingLevel : least;
}

/**
 * The least level that accepts this make now. Of a sampled lot, QC checks what was drawn, and the chargehand the
 * others; after one rejection QC checks every make of the lot.
 */
export function levelDueNow(
  joint: JointState,
  make: MakeState,
  settings: ShutdownSettings,
  lotRejected: boolean,
): CheckingLevel {
  const demanded = demandedLevel(joint, make, settings);
  if (levelRank(demanded) > levelRank('sample')) return demanded;
  if (lotRejected) return 'every';
  if (demanded !== 'sample') return demanded;
  return make.sampleDrawn ? 'sample' : 'chargehand';
}

/** Work has begun that a later make of the joint would undo. */
const hasBegun = (make: MakeState): boolean => make.openedAt !== null || make.fitted !== null || make.passes.length > 0;

/**
 * The make that the joint is in: the last one that has begun; before any has, the first that is not cancelled.
 * Earlier makes are history.
 */
export function currentMake(joint: JointState): MakeState | null {
  const makes = [...joint.makes].sort((a, b) => a.number - b.number);
  const begun = makes.filter((make) => hasBegun(make));
  return begun.at(-1) ?? makes.find((make) => !make.cancelled) ?? null;
}

/** A later make of the joint that has begun and so makes this one history; null when there is none. */
export function overtakenBy(joint: JointState, make: MakeState): MakeState | null {
  return joint.makes.find((other) => other.number > make.number && hasBegun(other)) ?? null;
}

/** The make to work on next: the first not cancelled and not history that is not finished. */
export function makeToWorkOn(joint: JointState): MakeState | null {
  return (
    [...joint.makes]
      .sort((a, b) => a.number - b.number)
      .find((make) => !make.cancelled && !overtakenBy(joint, make) && !restsForNextMake(joint, make)) ?? null
  );
}

/** A spade-in, test or temporary make that is done: the next make of the joint is what is to be worked on. */
function restsForNextMake(joint: JointState, make: MakeState): boolean {
  const next = joint.makes.some((other) => other.number > make.number && !other.cancelled);
  if (make.stage === 'handed-over') return true;
  return next && make.purpose !== 'final' && hasReached(make.stage, 'checked') && !make.leaking;
}

/** The gasket that the make is to have: its own, else the register's. */
export const gasketOf = (joint: JointState, make: MakeState): GasketSpecification =>
  make.gasket ?? joint.specification.gasket;

/** Faces to be inspected: two to each gasket of the stack. */
export function facesOf(joint: JointState, make: MakeState): number {
  const parts = make.clampedParts ?? joint.specification.clampedParts;
  const gaskets = parts.filter((part) => part.kind === 'gasket').length;
  return 2 * (gaskets > 0 ? gaskets : Math.max(1, gasketOf(joint, make).count));
}

export interface TemporaryFitting {
  readonly makeId: string;
  readonly gasket: boolean;
  readonly bolts: boolean;
}

/** A temporary gasket or temporary bolts that are in the joint now; null when there are none. */
export function temporaryFittingOf(joint: JointState): TemporaryFitting | null {
  const begun = [...joint.makes].filter((make) => hasBegun(make)).sort((a, b) => b.number - a.number);
  // Retightening leaves in what an earlier make fitted.
  const closing = begun.find((make) => passesStage(make.workScope, 'nipped-up'));
  if (!closing?.fitted) return null;
  const gasket = closing.fitted.gasketPurpose !== 'final';
  const bolts = closing.fitted.temporaryBolts;
  return gasket || bolts ? { makeId: closing.makeId, gasket, bolts } : null;
}
