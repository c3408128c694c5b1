import type { EventType } from '@seatwell/contract';
import { overtakenBy } from '../derived/makes.ts';
import { hasReached } from '../stages.ts';
import { moment } from '../time.ts';
import { nameOf, notQualified } from './people.ts';
import { list, type Rule, rule } from './rule.ts';

const opened = { events: ['opened'] as const };

const ON_THE_BOLTS = [
  'opened',
  'loosened',
  'stud-replaced',
  'pass-recorded',
  'final-round-recorded',
  'relaxation-pass-recorded',
] as const satisfies readonly EventType[];

export const openRules: readonly Rule[] = [
  rule({
    ...opened,
    code: 'open.zero-energy-checks',
    sentence: 'Two zero-energy checks are named.',
    why: 'One check can be made on the wrong line.',
    remedy: 'Check zero energy twice and name who did it and how.',
    clearedBy: ['chargehand'],
    floor: true,
    test: ({ zeroEnergyChecks }) =>
      zeroEnergyChecks.length >= 2
        ? null
        : { detail: `${zeroEnergyChecks.length} zero-energy checks are named.`, limit: 2 },
  }),
  rule({
    ...opened,
    code: 'open.zero-energy-by-two',
    sentence: 'The two zero-energy checks are made by two persons.',
    why: 'Who was mistaken about the line once is mistaken twice.',
    remedy: 'Have another person make the second check.',
    clearedBy: ['chargehand'],
    severity: 'flag',
    test: ({ zeroEnergyChecks }, context) => {
      const [person, ...others] = new Set(zeroEnergyChecks.map((check) => check.personId));
      return person && others.length === 0 && zeroEnergyChecks.length > 1
        ? { detail: `${nameOf(context, person)} made every check.`, limit: 'two persons' }
        : null;
    },
  }),
  rule({
    ...opened,
    code: 'open.first-break-caution',
    sentence: 'The caution of the first break was shown to the crew.',
    why: 'The first bolt loosened shows whether the isolation holds.',
    remedy: 'Show the caution before the first bolt.',
    clearedBy: ['chargehand'],
    test: ({ cautionShown }) => (cautionShown ? null : { detail: 'The caution was not shown.' }),
  }),
  rule({
    ...opened,
    code: 'open.qualified',
    sentence: 'Those who open the joint are qualified for disassembly through the shift.',
    why: 'Opening is where a wrong flange or trapped pressure hurts.',
    remedy: 'Put qualified people on it, or record the qualification.',
    clearedBy: ['inspector', 'administrator'],
    test: (_payload, context) => notQualified(context, 'disassembly'),
  }),
  rule({
    ...opened,
    code: 'open.planned-crew',
    sentence: 'The joint is opened by the crew that it is planned for.',
    why: 'Another crew may be at the wrong flange.',
    remedy: 'Assign the make to the crew that works on it.',
    clearedBy: ['coordinator'],
    severity: 'flag',
    test: (_payload, context) => {
      const { crewId } = context.make;
      if (crewId === null) return null;
      const others = context.performedBy.filter((id) => !context.persons[id]?.crewIds.includes(crewId));
      return others.length === 0
        ? null
        : { detail: `${list(others.map((id) => nameOf(context, id)))}: not of the planned crew.` };
    },
  }),
  rule({
    ...opened,
    code: 'open.permit-in-force',
    sentence: 'The permit of the release is in force when the joint is opened.',
    why: 'A permit that was withdrawn or has ended proves nothing any more.',
    remedy: 'Operations renews the permit and releases the joint again.',
    clearedBy: ['operations'],
    floor: true,
    test: (_payload, { make, permits, workTime }) => {
      const permit = permits.find((p) => p.permitId === make.permitId);
      if (!permit) return { detail: 'The permit of the release is not on record.' };
      if (permit.withdrawn) return { detail: `Permit ${permit.number} is withdrawn.` };
      return moment(workTime) > moment(permit.validUntil)
        ? { detail: `Permit ${permit.number} ended before ${workTime}.`, limit: permit.validUntil }
        : null;
    },
  }),
  rule({
    ...opened,
    code: 'open.earlier-make-closed',
    sentence: 'An earlier make that was begun is tight before the next one is opened.',
    why: 'A joint that is already open is not opened again: its record would say what never was.',
    remedy: 'Close and tighten the earlier make, or have it cancelled.',
    clearedBy: ['coordinator'],
    test: (_payload, { joint, make }) => {
      const unfinished = joint.makes.find(
        (other) =>
          other.number < make.number &&
          !other.cancelled &&
          !overtakenBy(joint, other) &&
          (other.openedAt !== null || other.fitted !== null || other.passes.length > 0) &&
          !hasReached(other.stage, 'tight'),
      );
      return unfinished ? { detail: `Make ${unfinished.number} is ${unfinished.stage}.`, limit: 'tight' } : null;
    },
  }),
  rule({
    code: 'make.pressure-off',
    sentence:
      'After its proof or a leak under pressure, operations releases the joint again before its bolts are touched.',
    why: 'A pressurised joint is never loosened or tightened outside a procedure made for it.',
    remedy: 'Take the pressure off; operations releases the joint again.',
    clearedBy: ['operations'],
    floor: true,
    events: ON_THE_BOLTS,
    test: (_payload, { make }) =>
      make.underPressure
        ? { detail: 'It may be under pressure: it was proven or leaked, and was not released since.' }
        : null,
  }),
];
