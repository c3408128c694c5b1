import type { AllowedAction, EventType } from '@seatwell/contract';
import { type JointState, type MakeState, nextStep, outOfOrder, RULES, type RuleContext } from '@seatwell/workflow';
import type { ReachTarget } from '../../platform/access/allows.ts';
import type { Actor } from '../../platform/sign-in/sessions.ts';
import { type Against, actionsOf } from '../reading/actions.ts';

/** What may be recorded on a make, in the order of its life. */
const ON_MAKE = [
  'make-assigned',
  'procedure-assigned',
  'target-approved',
  'break-released',
  'opened',
  'faces-inspected',
  'nipped-up',
  'pass-recorded',
  'final-round-recorded',
  'relaxation-pass-recorded',
  'checked',
  'witnessed',
  'witness-waived',
  'proven',
  'hand-over-offered',
  'handed-over',
  'taken-back',
  'stud-replaced',
  'loosened',
  'leak-found',
  'deviation-accepted',
  'make-cancelled',
  'corrected',
  'revoked',
  'review-settled',
] as const satisfies readonly EventType[];

const ON_JOINT = [
  'joint-specified',
  'make-planned',
  'hold-placed',
  'hold-released',
  'punch-raised',
  'permit-recorded',
  'joint-merged',
  'joint-voided',
] as const satisfies readonly EventType[];

/** Rules that need nothing but the joint and its make: they are known before anything is typed. */
const STANDING_RULES = RULES.filter(
  (rule) => rule.subject === 'make' && (rule.code === 'make.in-work' || rule.code.endsWith('.not-on-hold')),
);

/** The least that a question about order needs to say. */
const probe = (make: MakeState, type: EventType): unknown => {
  if (type === 'pass-recorded') return { pass: make.stage === 'tight' ? 1 : make.nextPass };
  if (type === 'checked') return { level: 'every', outcome: 'accepted' };
  return { point: 'tightening' };
};

function againstOnMake(joint: JointState, make: MakeState): (type: EventType) => Against | null {
  const steps = new Set(nextStep(make));
  const testAtHand = outOfOrder(make, 'witnessed', { point: 'test' }) === null;
  return (type) => {
    for (const rule of STANDING_RULES) {
      if (rule.subject !== 'make' || !rule.events.includes(type)) continue;
      const finding = rule.test({ type, payload: probe(make, type) }, { joint, make } as RuleContext);
      if (finding) return { code: rule.code, message: `${rule.sentence} ${finding.detail}` };
    }
    if (type === 'review-settled' && make.waiting.length === 0)
      return { code: 'nothing-in-review', message: 'No fact of this make waits for review.' };
    if (steps.has(type) || ((type === 'witnessed' || type === 'witness-waived') && testAtHand)) return null;
    const wrong = outOfOrder(make, type, probe(make, type));
    return wrong ? { code: wrong.code, message: wrong.detail } : null;
  };
}

/** What the caller may record on a make, each with the reason where not. */
export const makeActions = (actor: Actor, target: ReachTarget, joint: JointState, make: MakeState): AllowedAction[] =>
  actionsOf(actor, ON_MAKE, target, againstOnMake(joint, make));

/** The steps of a make that the caller may record now. */
export const ownSteps = (actor: Actor, target: ReachTarget, joint: JointState, make: MakeState): EventType[] => {
  const steps = new Set(nextStep(make));
  return makeActions(actor, target, joint, make)
    .filter((action) => action.allowed && steps.has(action.type))
    .map((action) => action.type);
};

/** What the caller may record about the joint as a whole. */
export const jointActions = (actor: Actor, target: ReachTarget, joint: JointState): AllowedAction[] =>
  actionsOf(actor, ON_JOINT, target, (type) => {
    if (joint.voided && type !== 'hold-released')
      return { code: 'voided', message: `The joint is void (${joint.voided.why}): ${joint.voided.reason}.` };
    if (type === 'hold-released' && joint.holds.length === 0)
      return { code: 'no-hold', message: 'The joint is not on hold.' };
    if (type === 'joint-merged' && !joint.found)
      return { code: 'not-found-joint', message: 'Only a found joint is merged into one of the register.' };
    return null;
  });
