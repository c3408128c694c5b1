import { uuidv7 } from 'uuidv7';
import type { Shutdown } from '../support/shutdown.ts';
import { type Point, type Tale, taleTo } from '../support/tale.ts';
import { nippedUp, wait } from '../support/work.ts';
import { tool, wrenchOnly } from './hire.ts';
import { asked, type RuleCases } from './rule-case.ts';

const at = (point: Point) => (shutdown: Shutdown) => taleTo(shutdown, point);

/** A pass with a wrench out of calibration, said to be done already: it is in review. */
async function passInReview(tale: Tale, performedBy?: readonly string[]): Promise<Tale> {
  const { toolId } = await tool(tale.shutdown, 'torque-wrench', [450, 'N·m'], { validThrough: '2027-01-31' });
  await tale.tell('pass-recorded', {
    change: { tools: wrenchOnly(toolId) },
    alreadyDone: true,
    ...(performedBy ? { performedBy } : {}),
  });
  return tale;
}

const inReview = async (shutdown: Shutdown) => passInReview(await taleTo(shutdown, 'nipped up'));

/** A pass in which the inspector lent a hand, in review. */
const withTheInspector = async (shutdown: Shutdown) =>
  passInReview(await taleTo(shutdown, 'nipped up'), [shutdown.technician.personId, shutdown.inspector.personId]);

/** A pass is told although nobody told of the nipping up. */
async function misplaced(shutdown: Shutdown): Promise<Tale> {
  const tale = await taleTo(shutdown, 'faces accepted');
  wait(shutdown, 30);
  await tale.tell('pass-recorded', { alreadyDone: true });
  return tale;
}

/** The nipping up that was not told in time, half an hour before the pass. */
async function nippedUpLate(tale: Tale): Promise<void> {
  const at = new Date(tale.shutdown.plant.now.getTime() - 30 * 60_000).toISOString();
  await tale.tell('nipped-up', { payload: nippedUp(tale.shutdown), at });
}

const RELEASED = { reason: 'Released by mistake' };

export const AMENDMENT_CASES: RuleCases = {
  'corrected.fact-only': asked('corrected', at('open'), {
    fires: { says: (tale) => ({ change: { eventId: tale.eventId('break-released'), payload: releasedAs(tale) } }) },
  }),
  'revoked.decision-only': asked('revoked', at('proven'), {
    fires: { says: (tale) => ({ change: { eventId: tale.eventId('opened') } }) },
  }),
  'revoked.entitled': asked('revoked', at('proven'), {
    fires: { says: ({ shutdown }) => ({ by: shutdown.operations }) },
  }),
  'revoked.release-not-worked-on': asked('revoked', at('open'), {
    fires: {
      says: (tale) => ({
        by: tale.shutdown.operations,
        change: { eventId: tale.eventId('break-released'), ...RELEASED },
      }),
    },
    satisfied: {
      given: at('released'),
      says: (tale) => ({
        by: tale.shutdown.operations,
        change: { eventId: tale.eventId('break-released'), ...RELEASED },
      }),
    },
  }),
  'review-settled.in-review': asked('review-settled', at('nipped up'), {
    fires: { says: (tale) => ({ change: { eventId: tale.eventId('nipped-up') } }) },
    satisfied: { first: (tale) => passInReview(tale) },
  }),
  'review-settled.not-own-work': asked('review-settled', withTheInspector, {
    fires: { says: ({ shutdown }) => ({ by: shutdown.inspector }) },
  }),
  'review-settled.has-its-place': asked('review-settled', misplaced, { satisfied: { first: nippedUpLate } }),
  'review-settled.punch-named': asked('review-settled', inReview, {
    fires: { says: { change: { outcome: 'accept-with-punch-item' } } },
    satisfied: { says: () => ({ change: { outcome: 'accept-with-punch-item' as const, punchId: uuidv7() } }) },
  }),
  'deviation.acceptable': asked('deviation-accepted', at('open'), {
    fires: { says: ({ shutdown }) => ({ by: shutdown.engineer, change: { rule: 'released.permit' } }) },
  }),
  'deviation.entitled': asked('deviation-accepted', at('open'), {
    fires: { says: { change: { rule: 'nipped-up.alignment-beyond-band' } } },
    satisfied: {
      says: ({ shutdown }) => ({ by: shutdown.engineer, change: { rule: 'nipped-up.alignment-beyond-band' } }),
    },
  }),
};

/** What the release said: a correction of it is well formed, and still refused. */
const releasedAs = (tale: Tale) => ({ permitId: tale.eventId('break-released'), remark: null });
