import type { EventType, WaitsForAnswer } from '@seatwell/contract';
import { actionFor } from '@seatwell/workflow';
import { allows, type ReachTarget } from '../../platform/access/allows.ts';
import type { Actor } from '../../platform/sign-in/sessions.ts';

/** What moves a make on from each wait; a leak or a rejected check has several ways. */
const MOVES_ON: Readonly<Record<string, readonly EventType[]>> = {
  procedure: ['procedure-assigned'],
  target: ['target-approved'],
  release: ['break-released'],
  opening: ['opened'],
  faces: ['faces-inspected'],
  'faces-again': ['faces-inspected'],
  'nip-up': ['nipped-up'],
  pass: ['pass-recorded'],
  'final-round': ['final-round-recorded'],
  'relaxation-pass': ['relaxation-pass-recorded'],
  repair: ['opened', 'loosened', 'pass-recorded', 'break-released'],
  check: ['checked'],
  witness: ['witnessed'],
  proof: ['proven'],
  'hand-over': ['hand-over-offered'],
  'taking-over': ['handed-over'],
};

/** Whether the caller can do now what a make waits for. */
export function doable(
  actor: Actor,
  target: ReachTarget,
  wait: WaitsForAnswer,
  nextSteps: readonly EventType[],
): boolean {
  if (wait.code === 'hold')
    return allows(actor, 'release-hold', target) && actor.grants.some((grant) => grant.role === wait.by);
  if (wait.code === 'review') return allows(actor, 'settle-review', target);
  const moves = MOVES_ON[wait.code] ?? [];
  // Who may check at a low level may not do so at a higher one.
  if (wait.code === 'check' && !allows(actor, actionFor('checked', wait.data), target)) return false;
  return moves.some((type) => nextSteps.includes(type));
}
