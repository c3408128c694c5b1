import { eventKind, type JointState, makeToWorkOn } from '@seatwell/workflow';
import type { DecisionInput } from '../recording/decision.ts';
import { shutdownOf } from '../recording/shutdown-of.ts';
import { lockJoints } from './joint-store.ts';

/** The joint that a command is about, locked, and the make of it. */
export interface Subject {
  readonly joint: JointState;
  readonly makeId: string | null;
}

async function locked(input: DecisionInput, jointId: string): Promise<JointState> {
  const { siteId, shutdownId } = shutdownOf(input);
  const joint = (await lockJoints(input.tx, siteId, shutdownId, [jointId])).get(jointId);
  if (!joint) throw new Error(`Joint ${jointId} is locked and not at hand.`);
  return joint;
}

/** A make of a found joint is by now a make of the joint of the register. */
const makeOf = (joint: JointState, makeId: string | null): string | null =>
  joint.foundAs?.find((found) => makeId !== null && found.makeId === makeId)?.intoMakeId ?? makeId;

/**
 * Locks the joint of a command. A fact about a found joint that was merged meanwhile is about the joint of the
 * register: a phone that was without signal knows only the temporary number, and nothing that was done is lost.
 *
 * @throws Problem `not-found` for a joint that this shutdown does not have
 */
export async function lockSubject(input: DecisionInput): Promise<Subject> {
  const joint = await locked(input, input.subjectId);
  const intoJointId = joint.voided?.intoJointId;
  if (!intoJointId || eventKind(input.type, input.payload) === 'decision')
    return { joint, makeId: makeOf(joint, input.makeId) };
  const into = await locked(input, intoJointId);
  const known = into.foundAs?.some((found) => found.makeId !== null && found.makeId === input.makeId);
  return { joint: into, makeId: known ? makeOf(into, input.makeId) : (makeToWorkOn(into)?.makeId ?? null) };
}
