import type { RuleContext } from '../context.ts';
import { gasketOf } from '../derived/makes.ts';
import { addHours, moment } from '../time.ts';
import { type Finding, type Rule, rule } from './rule.ts';

const RETIGHTENED_AS_FOUND: readonly string[] = [
  'retighten-ambient',
  'start-up-retorque',
  'live-tightening',
  'hot-bolting',
];

/** Fibre sheet bound with an elastomer, and elastomers themselves, harden with heat and crack when retightened. */
function hotElastomer({ joint, make }: RuleContext): Finding | null {
  const { family } = gasketOf(joint, make);
  return joint.specification.hotExposed && (family === 'fibre-sheet' || family === 'elastomer')
    ? { detail: `The gasket is ${family} and has been hot.`, limit: 'never retightened once hot' }
    : null;
}

export const tightRules: readonly Rule[] = [
  rule({
    code: 'tight.no-nut-movement',
    sentence: 'In the final round no nut moved.',
    why: 'A nut that still moves shows that its bolt was short of load.',
    remedy: 'Go round again at the full value until no nut moves.',
    clearedBy: ['chargehand'],
    events: ['final-round-recorded'],
    test: ({ nutMoved, rounds }) =>
      nutMoved ? { detail: `A nut still moved after ${rounds} ${rounds === 1 ? 'round' : 'rounds'}.` } : null,
  }),
  rule({
    code: 'tight.no-relaxation-pass-on-hot-elastomer',
    sentence: 'An elastomer-bound gasket that has been hot is never retightened.',
    why: 'It has hardened and cracks under the load.',
    remedy: 'Leave it; if it leaks, open the joint and fit a new gasket.',
    clearedBy: ['engineer'],
    floor: true,
    events: ['relaxation-pass-recorded', 'pass-recorded', 'final-round-recorded'],
    test: (_payload, context, type) =>
      type === 'relaxation-pass-recorded' || RETIGHTENED_AS_FOUND.includes(context.make.workScope)
        ? hotElastomer(context)
        : null,
  }),
  rule({
    code: 'tight.relaxation-waited',
    sentence: 'The relaxation pass comes after the time that the gasket needs to creep.',
    why: 'Made at once it finds nothing; the load is lost in the hours after.',
    remedy: 'Wait; else the engineer accepts with a reason.',
    clearedBy: ['engineer'],
    severity: 'reason',
    events: ['relaxation-pass-recorded'],
    test: ({ startedAt }, { make, settings }) => {
      if (make.tightAt === null) return null; // the order rule says so
      const from = addHours(make.tightAt, settings.relaxationPassAfter_h);
      return moment(startedAt) < moment(from) ? { detail: `Begun at ${startedAt}.`, limit: `from ${from}` } : null;
    },
  }),
];
