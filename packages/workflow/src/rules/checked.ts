import type { Payload } from '@seatwell/contract';
import type { RuleContext } from '../context.ts';
import { relaxationDue } from '../derived/flags.ts';
import { levelDueNow, levelRank } from '../derived/makes.ts';
import { moment } from '../time.ts';
import { nameOf } from './people.ts';
import { type Finding, list, type Rule, rule } from './rule.ts';

type Check = Payload<'checked'>;
const checked = { events: ['checked'] as const };
const fourEyes = { ...checked, floor: true, remedy: 'Have it checked by somebody else.' } as const;

const byQuality = (level: Check['level']): boolean => levelRank(level) >= levelRank('sample');

const hands = ({ make }: RuleContext): readonly string[] => [...make.workedBy, ...make.workRecordedBy];

/** Who checks: the signer; every rule of independence goes by person. */
function signer(context: RuleContext): string | Finding {
  return context.signerPersonId ?? { detail: 'Nobody signed the check.' };
}

export const checkedRules: readonly Rule[] = [
  rule({
    ...checked,
    code: 'checked.level',
    sentence: 'The joint is checked at the level that its criticality demands, or a higher one.',
    why: 'The effort goes where the risk is.',
    remedy: 'Have it checked at the level demanded.',
    clearedBy: ['inspector'],
    test: ({ level, outcome }, { joint, make, settings }) => {
      const due = levelDueNow(joint, make, settings, false);
      // Whoever finds a fault may reject.
      if (outcome === 'rejected') return null;
      return levelRank(level) >= levelRank(due) ? null : { detail: `Checked at level ${level}.`, limit: due };
    },
  }),
  rule({
    ...checked,
    code: 'checked.lot-rejected',
    sentence: 'After one rejection QC checks every make of the lot.',
    why: 'What one joint of the crew and shift showed, the others may hide.',
    remedy: 'QC checks this make.',
    clearedBy: ['inspector'],
    test: ({ level, outcome }, { lotRejections }) =>
      outcome === 'accepted' && lotRejections.length > 0 && !byQuality(level)
        ? { detail: `Rejected in the same lot: ${list(lotRejections)}.`, limit: 'every' }
        : null,
  }),
  rule({
    ...fourEyes,
    code: 'checked.self-by-two',
    sentence: 'A check by the crew itself is signed by two named persons who did the work.',
    why: 'One pair of eyes does not see its own slip.',
    remedy: 'Name two of those who did the work.',
    clearedBy: ['chargehand'],
    test: ({ level }, context) => {
      if (level !== 'self') return null;
      const both = [...new Set(context.performedBy)].filter((id) => context.make.workedBy.includes(id));
      return both.length >= 2
        ? null
        : { detail: `${both.length} of those who did the work are named.`, limit: 'two persons' };
    },
  }),
  rule({
    ...fourEyes,
    code: 'checked.chargehand-no-pass',
    sentence: 'The chargehand who checks has recorded no pass of this make.',
    why: 'Nobody checks his own work.',
    clearedBy: ['chargehand', 'inspector'],
    test: ({ level }, context) => {
      if (level !== 'chargehand') return null;
      const person = signer(context);
      if (typeof person !== 'string') return person;
      return hands(context).includes(person)
        ? { detail: `${nameOf(context, person)} worked on this make or recorded its passes.` }
        : null;
    },
  }),
  rule({
    ...fourEyes,
    code: 'checked.not-of-the-crew',
    sentence: 'QC and witness are not of the crew.',
    why: 'A check by the crew is not independent.',
    clearedBy: ['inspector'],
    test: ({ level }, context) => {
      if (!byQuality(level)) return null;
      const person = signer(context);
      if (typeof person !== 'string') return person;
      const { crewId } = context.make;
      const ofCrew = crewId !== null && (context.persons[person]?.crewIds.includes(crewId) ?? false);
      return ofCrew || hands(context).includes(person)
        ? { detail: `${nameOf(context, person)} is of the crew that made this joint.` }
        : null;
    },
  }),
  rule({
    ...fourEyes,
    code: 'checked.other-company',
    sentence: 'Where the criticality asks for it, QC is of another company than the crew.',
    why: 'A company does not release its own work on the joints that matter most.',
    clearedBy: ['inspector'],
    test: ({ level }, context) => {
      const demand = context.settings.criticalities[context.joint.criticality];
      if (!byQuality(level) || !demand.checkerFromOtherCompany) return null;
      const person = signer(context);
      if (typeof person !== 'string') return person;
      const company = context.persons[person]?.company;
      if (!company) return { detail: `The company of ${nameOf(context, person)} is not known.` };
      const same = context.make.workedBy.filter((id) => context.persons[id]?.company === company);
      return same.length > 0
        ? { detail: `${nameOf(context, person)} and the crew are both of ${company}.`, limit: 'another company' }
        : null;
    },
  }),
  rule({
    ...checked,
    code: 'checked.relaxation-not-overdue',
    sentence: 'The relaxation pass that criticality or procedure demand is not overdue.',
    why: 'A gasket that has crept has lost load.',
    remedy: 'Make the relaxation pass.',
    clearedBy: ['chargehand'],
    test: ({ outcome }, { joint, make, settings, workTime }) => {
      const due = relaxationDue(joint, make, settings);
      return outcome === 'accepted' && due && moment(workTime) >= moment(due.overdueFrom)
        ? { detail: `Due from ${due.from} and not made.`, limit: `before ${due.overdueFrom}` }
        : null;
    },
  }),
  rule({
    ...checked,
    code: 'checked.witness-point',
    sentence: 'Where the criticality demands a witness point, the witness has signed or waived it.',
    why: 'The client asked to see this joint tightened.',
    remedy: 'The witness signs or waives the point.',
    clearedBy: ['witness'],
    test: ({ outcome }, { joint, make, settings }) => {
      const demanded = settings.criticalities[joint.criticality].witnessPoint || make.checkingLevel === 'witness';
      return outcome === 'accepted' && demanded && !make.witnessed.includes('tightening')
        ? { detail: 'The witness point of the tightening is neither signed nor waived.' }
        : null;
    },
  }),
  rule({
    code: 'checked.nothing-in-review',
    sentence: 'No fact of this make waits for review.',
    why: 'What is signed must be known.',
    remedy: 'Settle what is in review.',
    clearedBy: ['inspector', 'engineer'],
    events: ['checked', 'proven', 'handed-over'],
    test: (_payload, { make }) =>
      make.waiting.length > 0
        ? { detail: `In review: ${list(make.waiting.map((w) => `${w.type} of ${w.workTime}`))}.` }
        : null,
  }),
  rule({
    ...checked,
    code: 'checked.rejection-reason',
    sentence: 'A rejection says why.',
    why: 'The crew has to know what to put right.',
    remedy: 'Give the reason.',
    clearedBy: ['inspector', 'chargehand'],
    test: ({ outcome, reason }) =>
      outcome === 'rejected' && !reason ? { detail: 'The rejection has no reason.' } : null,
  }),
];
