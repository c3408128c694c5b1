import { DEFAULT_SETTINGS } from '@seatwell/workflow';
import * as id from '../ids.ts';
import { toldTo } from '../story.ts';
import { surroundings } from '../world.ts';
import { at, type RuleCase } from './rule-case.ts';
import { byQuality, checkedByItself, inReview, ofCriticality } from './situations.ts';

/** The check, at each level. */
export const CHECKING_CASES: Readonly<Record<string, RuleCase>> = {
  'checked.level': at(
    'tight',
    'checked',
    { change: { level: 'chargehand' } },
    { story: () => toldTo('tight', ofCriticality('A')).record('witnessed'), change: byQuality },
  ),
  'checked.lot-rejected': at(
    'tight',
    'checked',
    { change: { level: 'chargehand' } },
    { change: byQuality, around: { lotRejections: ['J-1009'] } },
  ),
  'checked.self-by-two': at(
    'tight',
    'checked',
    { around: { performedBy: [id.ANA, id.CARL] } },
    { change: { level: 'self' }, around: checkedByItself },
  ),
  'checked.chargehand-no-pass': at('tight', 'checked', { around: { signerPersonId: id.ANA } }),
  'checked.not-of-the-crew': at('tight', 'checked', { around: { signerPersonId: id.CARL } }, { change: byQuality }),
  'checked.other-company': at(
    'tight',
    'checked',
    {
      around: {
        persons: {
          ...surroundings.persons,
          [id.INES]: { ...surroundings.persons[id.INES]!, company: 'Northbank Fitting' },
        },
      },
    },
    { story: () => toldTo('tight', ofCriticality('A')).record('witnessed'), change: byQuality },
  ),
  'checked.relaxation-not-overdue': at(
    'tight',
    'checked',
    {
      story: () => toldTo('tight', ofCriticality('A')).wait(DEFAULT_SETTINGS.relaxationPassOverdue_h),
      change: byQuality,
    },
    { story: () => toldTo('tight', ofCriticality('A')).record('witnessed'), change: byQuality },
  ),
  'checked.witness-point': at(
    'tight',
    'checked',
    { story: () => toldTo('tight', ofCriticality('A')), change: byQuality },
    { story: () => toldTo('tight', ofCriticality('A')).record('witnessed'), change: byQuality },
  ),
  'checked.nothing-in-review': at('tight', 'checked', { story: inReview }),
  'checked.rejection-reason': at(
    'tight',
    'checked',
    { change: { reason: null } },
    { change: { outcome: 'rejected', reason: 'Two nuts without paint mark' } },
  ),
};
