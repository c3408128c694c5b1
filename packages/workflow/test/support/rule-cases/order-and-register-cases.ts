import { Story, toldTo } from '../story.ts';
import { ask, at, type RuleCase } from './rule-case.ts';
import { foundTo, holdCase, leaking, onHold, releasedAgain } from './situations.ts';

/** What the order of the work and the register demand. */
export const ORDER_AND_REGISTER_CASES: Readonly<Record<string, RuleCase>> = {
  'engineered.before-tightening': at('procedure assigned', 'target-approved', { story: () => toldTo('checked') }),
  'engineered.procedure-first': at('procedure assigned', 'target-approved', { story: () => toldTo('listed') }),
  'released.engineered-first': at('engineered', 'break-released', { story: () => toldTo('procedure assigned') }),
  'open.released-first': at('released', 'opened', { story: () => toldTo('engineered') }),
  'faces.open-first': at('open', 'faces-inspected', { story: () => toldTo('released') }),
  'nipped-up.faces-first': at('faces accepted', 'nipped-up', { story: () => toldTo('open') }),
  'passes.nipped-up-first': at('nipped up', 'pass-recorded', { story: () => toldTo('faces accepted') }),
  'passes.in-order': at('first pass', 'pass-recorded', { change: { pass: 3 } }, { change: { pass: 2 } }),
  'tight.passes-first': at('every pass', 'final-round-recorded', { story: () => toldTo('first pass') }),
  'tight.before-relaxation': at(
    'tight',
    'relaxation-pass-recorded',
    { story: () => toldTo('every pass') },
    { story: () => toldTo('tight').wait(4) },
  ),
  'stud.bolts-in': at('nipped up', 'stud-replaced', { story: () => toldTo('open') }),
  'loosened.bolts-in': at('tight', 'loosened', { story: () => toldTo('open') }),
  'checked.tight-first': at('tight', 'checked', { story: () => toldTo('every pass') }),
  'witnessed.at-its-stage': at('tight', 'witnessed', { story: () => toldTo('nipped up') }),
  'proven.checked-first': at('checked', 'proven', { story: () => toldTo('tight') }),
  'handed-over.proven-first': at('proven', 'hand-over-offered', { story: () => toldTo('checked') }),
  'taken-back.handed-over-first': at('handed over', 'taken-back', { story: () => toldTo('proven') }),

  'released.not-on-hold': holdCase('engineered', 'break-released'),
  'open.not-on-hold': holdCase('released', 'opened'),
  'faces.not-on-hold': holdCase('open', 'faces-inspected'),
  'nipped-up.not-on-hold': holdCase('faces accepted', 'nipped-up'),
  'passes.not-on-hold': holdCase('nipped up', 'pass-recorded'),
  'tight.not-on-hold': holdCase('every pass', 'final-round-recorded'),
  'checked.not-on-hold': holdCase('tight', 'checked'),
  'proven.not-on-hold': holdCase('checked', 'proven'),
  'handed-over.not-on-hold': holdCase('proven', 'hand-over-offered'),
  'hold-released.by-its-role': at(
    'open',
    'hold-released',
    { around: { actorRoles: ['coordinator'] } },
    { story: onHold('open') },
  ),
  'register.begun-work-stays': at('released', 'make-cancelled', { story: () => toldTo('open') }),
  'register.merged-in-register': {
    fires: () => ask(new Story(), 'joint-merged'),
    satisfied: () => ask(foundTo('listed'), 'joint-merged'),
  },
  'register.merged-once-worked': {
    fires: () =>
      ask(
        foundTo('first pass'),
        'joint-merged',
        {},
        { mergeInto: { joint: toldTo('open').state, make: toldTo('open').make() } },
      ),
    satisfied: () => ask(foundTo('first pass'), 'joint-merged'),
  },
  'make.in-work': at('released', 'opened', { story: () => toldTo('released').record('joint-voided') }),
  'make.pressure-off': at('tight', 'loosened', { story: leaking }, { story: releasedAgain }),
};
