import { type Rule, rule } from './rule.ts';
import { severityOf } from './severity.ts';
import { RULES_ABOUT_WORK } from './work-rules.ts';

export const deviationRules: readonly Rule[] = [
  rule({
    code: 'deviation.acceptable',
    sentence: 'A deviation lets pass one stated rule that asks for a reason; a stop cannot be accepted.',
    why: 'Some rules are there because somebody was hurt.',
    remedy: 'Clear what the rule asks for.',
    clearedBy: ['engineer'],
    floor: true,
    events: ['deviation-accepted'],
    test: ({ rule: code }, { joint, settings }) => {
      const named = RULES_ABOUT_WORK.find((r) => r.code === code);
      if (!named) return { detail: `There is no rule “${code}”.` };
      const severity = severityOf(named, joint.criticality, settings);
      return severity === 'reason' ? null : { detail: `“${named.sentence}” is a ${severity}.`, limit: 'reason' };
    },
  }),
  rule({
    code: 'deviation.entitled',
    sentence: 'Who accepts a deviation has a role that the rule names.',
    why: 'QC accepts within its band, the engineer beyond.',
    remedy: 'Have it accepted in that role.',
    clearedBy: ['engineer'],
    floor: true,
    events: ['deviation-accepted'],
    test: ({ rule: code }, { actorRoles, joint, settings }) => {
      const named = RULES_ABOUT_WORK.find((r) => r.code === code);
      // The rule above speaks of what cannot be accepted at all.
      if (!named || severityOf(named, joint.criticality, settings) !== 'reason') return null;
      return named.clearedBy.some((role) => actorRoles.includes(role))
        ? null
        : { detail: `Your roles are ${actorRoles.join(', ') || 'none'}.`, limit: named.clearedBy.join(' or ') };
    },
  }),
];
