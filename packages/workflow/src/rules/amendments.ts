import type { EventType } from '@seatwell/contract';
import { actionFor, eventKind, isEventType, needsSignature } from '../catalogue.ts';
import type { NamedEvent, RuleContext } from '../context.ts';
import { roleAllows } from '../roles.ts';
import { nameOf } from './people.ts';
import { type Finding, type Rule, rule } from './rule.ts';

const AMENDMENTS: readonly string[] = ['corrected', 'revoked', 'review-settled'];

/** What somebody signed is revoked, a check by the crew included; what was only told is corrected. */
const isRevoked = ({ type, payload }: NamedEvent): boolean =>
  isEventType(type) && (eventKind(type, payload) === 'decision' || needsSignature(type, payload));

/** The named event, or why there is none to go by. */
function named(context: RuleContext): NamedEvent | Finding {
  return context.named ?? { detail: 'No event with this id is on record for this joint.' };
}

const isFinding = (what: NamedEvent | Finding): what is Finding => 'detail' in what;

export const amendmentRules: readonly Rule[] = [
  rule({
    code: 'corrected.fact-only',
    sentence: 'A correction names a fact; decisions and signed checks are revoked, not corrected.',
    why: 'What was signed is not rewritten.',
    remedy: 'Revoke the decision and take it again.',
    clearedBy: ['inspector', 'engineer'],
    floor: true,
    events: ['corrected'],
    test: (_payload, context) => {
      const event = named(context);
      if (isFinding(event)) return event;
      return isEventType(event.type) && !isRevoked(event) && !AMENDMENTS.includes(event.type)
        ? null
        : { detail: `${event.type} is not a fact that can be corrected.` };
    },
  }),
  rule({
    code: 'revoked.decision-only',
    sentence: 'A revocation names a decision or signed check that still counts; facts are corrected.',
    why: 'What was done stays done.',
    remedy: 'Correct the fact.',
    clearedBy: ['inspector', 'engineer'],
    floor: true,
    events: ['revoked'],
    test: (_payload, context) => {
      const event = named(context);
      if (isFinding(event)) return event;
      if (event.revoked) return { detail: `This ${event.type} is revoked already.` };
      return isRevoked(event) && event.type !== 'revoked'
        ? null
        : { detail: `${event.type} is not a decision that can be revoked.` };
    },
  }),
  rule({
    code: 'revoked.entitled',
    sentence: 'Who revokes a decision is entitled to take it.',
    why: 'QC does not take back the release of operations.',
    remedy: 'Have it revoked in the role that decided it.',
    clearedBy: ['coordinator'],
    floor: true,
    events: ['revoked'],
    test: (_payload, context) => {
      const event = named(context);
      if (isFinding(event) || !isEventType(event.type)) return null; // the rule above says so
      const action = actionFor(event.type as EventType, event.payload);
      return context.actorRoles.some((role) => roleAllows(role, action))
        ? null
        : { detail: `No role of yours may ${action}.` };
    },
  }),
  rule({
    code: 'revoked.release-not-worked-on',
    sentence: 'A release to break is revoked before the joint is touched.',
    why: 'An open joint does not close because its release is taken back: hold it instead.',
    remedy: 'Place a hold.',
    clearedBy: ['operations'],
    floor: true,
    events: ['revoked'],
    test: (_payload, { named: event, make }) =>
      event?.type === 'break-released' && (make.openedAt !== null || make.passes.length > 0)
        ? { detail: `The make is ${make.stage} under this release.` }
        : null,
  }),
  rule({
    code: 'review-settled.in-review',
    sentence: 'What is settled is a fact in review.',
    why: 'A fact that counts is corrected, not settled.',
    remedy: 'Correct the fact, or choose the one in review.',
    clearedBy: ['inspector', 'engineer'],
    floor: true,
    events: ['review-settled'],
    test: (_payload, context) => {
      const event = named(context);
      if (isFinding(event)) return event;
      return event.inReview ? null : { detail: `This ${event.type} is not in review.` };
    },
  }),
  rule({
    code: 'review-settled.not-own-work',
    sentence: 'Who settles a review did not do the work.',
    why: 'Nobody lets his own exception pass.',
    remedy: 'Somebody else settles it.',
    clearedBy: ['inspector', 'engineer'],
    floor: true,
    events: ['review-settled'],
    test: (_payload, context) => {
      const person = context.signerPersonId;
      if (person === null) return { detail: 'Nobody signed the settlement.' };
      return context.named?.performedBy.includes(person)
        ? { detail: `${nameOf(context, person)} did the work.` }
        : null;
    },
  }),
  rule({
    code: 'review-settled.has-its-place',
    sentence: 'A fact is accepted once what must come before it is on record.',
    why: 'No stage is reached without the one before it, whoever accepts it.',
    remedy: 'Record or settle what came before it, or reject it as not done.',
    clearedBy: ['chargehand', 'inspector'],
    floor: true,
    events: ['review-settled'],
    test: ({ eventId, outcome }, { make }) => {
      if (outcome === 'reject-as-not-done') return null;
      const missing = make.waiting.find((waiting) => waiting.eventId === eventId)?.missing;
      return missing ? { detail: missing } : null;
    },
  }),
  rule({
    code: 'review-settled.punch-named',
    sentence: 'Accepting with a punch item names the item.',
    why: 'An item that nobody raised is not closed by anybody.',
    remedy: 'Raise the punch item and name it.',
    clearedBy: ['inspector', 'engineer'],
    events: ['review-settled'],
    test: ({ outcome, punchId }) =>
      outcome === 'accept-with-punch-item' && punchId === null ? { detail: 'No punch item is named.' } : null,
  }),
];
