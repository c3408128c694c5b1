import type { ShutdownEventType } from '@seatwell/contract';
import { foundTo } from '../support/found.ts';
import { type Point, type Tale, taleTo } from '../support/tale.ts';
import { wait } from '../support/work.ts';
import { asked, type RuleCase, type RuleCases } from './rule-case.ts';

/** Asked for too early: told to where it does not fit yet, refused, and accepted once what was missing is told. */
const tooEarly = (type: ShutdownEventType, at: Point, until: Point, beside: readonly string[] = []): RuleCase =>
  asked(type, (shutdown) => taleTo(shutdown, at), { satisfied: { first: (tale) => tale.goOn(until, at) }, beside });

const onHold = (type: ShutdownEventType, at: Point): RuleCase =>
  asked(type, (shutdown) => taleTo(shutdown, at), {
    fires: { first: (tale) => tale.tell('hold-placed') },
    satisfied: { first: (tale) => tale.tell('hold-released') },
  });

/** The pack is released and read while the joint is still at the point. */
const tested = async (tale: Tale) => {
  await tale.tell('pack-released');
  wait(tale.shutdown, 45);
  await tale.tell('test-reading');
};

export const ORDER_CASES: RuleCases = {
  'engineered.before-tightening': asked('target-approved', (shutdown) => taleTo(shutdown, 'checked'), {
    satisfied: {
      first: (tale) =>
        tale.tell('checked', {
          by: tale.shutdown.inspector,
          change: { level: 'every', outcome: 'rejected', reason: 'Not tightened to the target' },
        }),
    },
  }),
  'engineered.procedure-first': tooEarly('target-approved', 'listed', 'procedure assigned', [
    'engineered.procedure-approved',
    'engineered.target-for-stack',
  ]),
  'released.engineered-first': tooEarly('break-released', 'procedure assigned', 'engineered'),
  'register.begun-work-stays': asked('make-cancelled', (shutdown) => taleTo(shutdown, 'open'), {
    satisfied: { given: (shutdown) => taleTo(shutdown, 'released') },
  }),
  'register.merged-in-register': asked('joint-merged', (shutdown) => foundTo(shutdown, 'listed'), {
    fires: {
      says: async ({ shutdown }) => {
        const gone = await taleTo(shutdown, 'listed');
        await gone.tell('joint-voided');
        return { change: { intoJointId: gone.jointId } };
      },
    },
  }),
  'register.merged-once-worked': asked('joint-merged', (shutdown) => foundTo(shutdown, 'open'), {
    fires: { says: async ({ shutdown }) => ({ change: { intoJointId: (await taleTo(shutdown, 'open')).jointId } }) },
  }),
  'open.released-first': asked('opened', (shutdown) => taleTo(shutdown, 'engineered'), {
    satisfied: { first: (tale) => tale.goOn('released', 'engineered') },
    beside: ['open.permit-in-force'],
  }),
  'faces.open-first': tooEarly('faces-inspected', 'released', 'open'),
  'nipped-up.faces-first': tooEarly('nipped-up', 'open', 'faces accepted'),
  'passes.nipped-up-first': tooEarly('pass-recorded', 'faces accepted', 'nipped up'),
  'passes.in-order': asked('pass-recorded', (shutdown) => taleTo(shutdown, 'first pass'), {
    fires: { says: async (tale) => ({ change: { pass: 3, ...(await fullSetting(tale)) } }) },
    satisfied: { first: (tale) => tale.tell('pass-recorded') },
  }),
  'tight.passes-first': tooEarly('final-round-recorded', 'first pass', 'every pass'),
  'tight.before-relaxation': asked('relaxation-pass-recorded', (shutdown) => taleTo(shutdown, 'every pass'), {
    satisfied: {
      first: async (tale) => {
        await tale.tell('final-round-recorded');
        wait(tale.shutdown, 5 * 60);
      },
    },
  }),
  'stud.bolts-in': tooEarly('stud-replaced', 'open', 'nipped up'),
  'loosened.bolts-in': tooEarly('loosened', 'open', 'nipped up'),
  'checked.tight-first': tooEarly('checked', 'every pass', 'tight'),
  'witnessed.at-its-stage': tooEarly('witnessed', 'nipped up', 'first pass'),
  'proven.checked-first': asked('proven', (shutdown) => taleTo(shutdown, 'tight'), {
    fires: { first: tested },
    satisfied: { first: (tale) => tale.tell('checked') },
  }),
  'handed-over.proven-first': tooEarly('hand-over-offered', 'tested', 'proven', ['handed-over.joints-reconciled']),
  'taken-back.handed-over-first': tooEarly('taken-back', 'proven', 'handed over'),

  'released.not-on-hold': onHold('break-released', 'engineered'),
  'open.not-on-hold': onHold('opened', 'released'),
  'faces.not-on-hold': onHold('faces-inspected', 'open'),
  'nipped-up.not-on-hold': onHold('nipped-up', 'faces accepted'),
  'passes.not-on-hold': onHold('pass-recorded', 'nipped up'),
  'tight.not-on-hold': onHold('final-round-recorded', 'every pass'),
  'checked.not-on-hold': onHold('checked', 'tight'),
  'proven.not-on-hold': onHold('proven', 'tested'),
  'handed-over.not-on-hold': onHold('hand-over-offered', 'proven'),
  'hold-released.by-its-role': asked('hold-released', (shutdown) => taleTo(shutdown, 'open'), {
    fires: {
      first: (tale) => tale.tell('hold-placed'),
      says: (tale) => ({ by: tale.shutdown.coordinator }),
    },
  }),
  'make.in-work': asked('opened', (shutdown) => taleTo(shutdown, 'released'), {
    fires: { first: (tale) => tale.tell('joint-voided') },
    satisfied: {
      first: (tale) =>
        tale.tell('revoked', {
          by: tale.shutdown.coordinator,
          change: { eventId: tale.eventId('joint-voided'), reason: 'It is opened after all' },
        }),
    },
  }),
  'make.pressure-off': asked('loosened', (shutdown) => taleTo(shutdown, 'tight'), {
    fires: { first: (tale) => tale.tell('leak-found') },
    satisfied: { first: (tale) => tale.tell('break-released') },
  }),
};

/** What the tool is set to in the last pass. */
async function fullSetting(tale: Tale) {
  const { target } = await tale.make();
  const torque_Nm = Math.round(target?.passes[2]?.torque_Nm ?? Number.NaN);
  return { set: { torque_Nm, asEntered: { value: torque_Nm, unit: 'N·m' } } };
}
