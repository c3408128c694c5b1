import { DEFAULT_SETTINGS } from '@seatwell/workflow';
import * as id from '../ids.ts';
import { toldTo } from '../story.ts';
import { surroundings } from '../world.ts';
import { at, type RuleCase } from './rule-case.ts';
import { eventOf, hotFibre, hydraulic, setTo, unqualified, withTool } from './situations.ts';

/** Passes, tools and the final round. */
export const TIGHTENING_CASES: Readonly<Record<string, RuleCase>> = {
  'passes.target-in-force': at('nipped up', 'pass-recorded', {
    story: () => {
      const story = toldTo('nipped up');
      return story.record('revoked', eventOf(story, 'target-approved'));
    },
  }),
  'passes.talk': at('nipped up', 'pass-recorded', {
    around: { talks: [{ ...surroundings.talks[0]!, revision: 1 }] },
  }),
  'passes.qualified': at('nipped up', 'pass-recorded', { around: unqualified(id.BEN) }),
  'passes.every-bolt': at('nipped up', 'pass-recorded', { change: { boltsDone: 5 } }),
  'passes.gap-check-overnight': at(
    'first pass',
    'pass-recorded',
    { change: { gapsChecked_mm: null } },
    {
      change: { ...setTo(168), pass: 2, gapsChecked_mm: [3.1, 3.2, 3.1, 3.2] },
      around: { leftOvernight: true },
    },
  ),
  'passes.set-as-target': at('nipped up', 'pass-recorded', { change: setTo(90) }, { change: setTo(74) }),
  'passes.time-plausible': at('nipped up', 'pass-recorded', {
    change: { startedAt: '2027-03-02T13:59:30.000Z', endedAt: '2027-03-02T14:00:00.000Z' },
  }),
  'passes.one-place-at-a-time': at('nipped up', 'pass-recorded', {
    around: { elsewhereAtTheSameTime: ['J-1002'] },
  }),
  'passes.tool-calibrated': at('nipped up', 'pass-recorded', {
    around: withTool(id.WRENCH, { failedOn: '2027-03-01' }),
  }),
  'passes.tool-set-complete': at(
    'nipped up',
    'pass-recorded',
    { change: { tools: { ...hydraulic, gaugeId: null } } },
    { change: { tools: hydraulic } },
  ),
  'passes.tool-in-range': at('nipped up', 'pass-recorded', { change: setTo(60) }, { change: setTo(72) }),

  'tight.no-nut-movement': at('every pass', 'final-round-recorded', { change: { nutMoved: true } }),
  'tight.no-relaxation-pass-on-hot-elastomer': at(
    'tight',
    'relaxation-pass-recorded',
    { story: () => hotFibre(true) },
    { story: () => hotFibre(false) },
  ),
  'tight.relaxation-waited': at(
    'tight',
    'relaxation-pass-recorded',
    { story: () => toldTo('tight') },
    { story: () => toldTo('tight').wait(DEFAULT_SETTINGS.relaxationPassAfter_h) },
  ),
};
