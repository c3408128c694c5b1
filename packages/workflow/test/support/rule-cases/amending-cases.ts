import * as id from '../ids.ts';
import { toldTo } from '../story.ts';
import { ask, at, type RuleCase } from './rule-case.ts';
import { aboutEvent, inReview, misplaced, settlement } from './situations.ts';

/** Corrections, revocations, settled reviews, deviations. */
export const AMENDING_CASES: Readonly<Record<string, RuleCase>> = {
  'corrected.fact-only': {
    fires: () => aboutEvent('corrected', 'checked', 'break-released'),
    satisfied: () => aboutEvent('corrected', 'checked', 'opened'),
  },
  'revoked.decision-only': {
    fires: () => aboutEvent('revoked', 'proven', 'opened'),
    satisfied: () => aboutEvent('revoked', 'proven', 'proven'),
  },
  'revoked.entitled': {
    fires: () => aboutEvent('revoked', 'proven', 'proven', { actorRoles: ['operations'] }),
    satisfied: () => aboutEvent('revoked', 'proven', 'proven', { actorRoles: ['inspector'] }),
  },
  'revoked.release-not-worked-on': {
    fires: () => aboutEvent('revoked', 'open', 'break-released'),
    satisfied: () => aboutEvent('revoked', 'released', 'break-released'),
  },
  'review-settled.in-review': {
    fires: () => ask(toldTo('tight'), 'review-settled', settlement(toldTo('tight'))),
    satisfied: () => ask(inReview(), 'review-settled', settlement(inReview())),
  },
  'review-settled.not-own-work': {
    fires: () => ask(inReview(), 'review-settled', settlement(inReview()), { signerPersonId: id.ANA }),
    satisfied: () => ask(inReview(), 'review-settled', settlement(inReview())),
  },
  'review-settled.has-its-place': {
    fires: () => ask(misplaced(), 'review-settled', settlement(misplaced())),
    satisfied: () => ask(misplaced(), 'review-settled', { ...settlement(misplaced()), outcome: 'reject-as-not-done' }),
  },
  'review-settled.punch-named': {
    fires: () => ask(inReview(), 'review-settled', { ...settlement(inReview()), outcome: 'accept-with-punch-item' }),
    satisfied: () =>
      ask(inReview(), 'review-settled', {
        ...settlement(inReview()),
        outcome: 'accept-with-punch-item',
        punchId: id.PUNCH,
      }),
  },
  'deviation.acceptable': at('open', 'deviation-accepted', { change: { rule: 'released.permit' } }),
  'deviation.entitled': at(
    'open',
    'deviation-accepted',
    { around: { actorRoles: ['inspector'] } },
    { change: { rule: 'nipped-up.alignment-beyond-band' } },
  ),
};
