import { temporaryFittingOf } from '../derived/makes.ts';
import { type Finding, list, type Rule, rule } from './rule.ts';

const handed = { events: ['hand-over-offered', 'handed-over'] as const, floor: true } as const;

const sameWords = (a: readonly string[], b: readonly string[]): boolean =>
  a.length === b.length && a.every((words) => b.includes(words));

const zero = (what: readonly string[] | undefined, says: string): Finding | null => {
  if (!what) return { detail: 'The joint is in no system that could be looked at.' };
  return what.length === 0 ? null : { detail: `${says}: ${list(what)}.`, limit: 0 };
};

export const handedOverRules: readonly Rule[] = [
  rule({
    ...handed,
    code: 'handed-over.joints-reconciled',
    sentence: 'Every joint of the system is proven, void or without work.',
    why: 'The one joint that nobody counted is open.',
    remedy: 'Prove, void or cancel what is left.',
    clearedBy: ['coordinator'],
    test: (_payload, { system }) => zero(system?.notProven, 'Not proven'),
  }),
  rule({
    ...handed,
    code: 'handed-over.own-system',
    sentence: 'A joint is handed over with its own system.',
    why: 'Another system has other zeros.',
    remedy: 'Hand it over with its system.',
    clearedBy: ['coordinator'],
    test: ({ systemId }, { joint, system }) =>
      joint.whereabouts.systemId === systemId
        ? null
        : { detail: `${joint.tag} is not in system ${system?.code ?? systemId}.` },
  }),
  rule({
    ...handed,
    code: 'handed-over.no-temporary-blinds',
    sentence: 'Temporary blinds in the system are zero.',
    why: 'A blind left in stops the flow, or the relief.',
    remedy: 'Take the blinds out and record it.',
    clearedBy: ['operations', 'coordinator'],
    test: (_payload, { system }) => zero(system?.temporaryBlindsIn, 'Still in'),
  }),
  rule({
    ...handed,
    code: 'handed-over.no-temporary-fittings',
    sentence: 'Temporary gaskets and bolts in the system are zero.',
    why: 'A test gasket in service is a leak that waits.',
    remedy: 'Remake the joints with their final gasket and bolting.',
    clearedBy: ['coordinator'],
    test: (_payload, { system, joint }) => {
      const own = temporaryFittingOf(joint) ? [joint.tag] : [];
      return zero(system ? [...new Set([...own, ...system.temporaryFittings])] : undefined, 'Temporary fittings in');
    },
  }),
  rule({
    ...handed,
    code: 'handed-over.no-A-items',
    sentence: 'Category A items of the system are zero.',
    why: 'Category A is what must be done before start-up.',
    remedy: 'Close the A items.',
    clearedBy: ['inspector'],
    test: (_payload, { system }) => zero(system?.unclosedA, 'Open'),
  }),
  rule({
    ...handed,
    code: 'handed-over.exceptions-listed',
    sentence: 'What is still open in category B is listed as an exception.',
    why: 'Operations takes over what it knows of.',
    remedy: 'Close the items or list them as exceptions.',
    clearedBy: ['coordinator'],
    test: ({ exceptions }, { system }) =>
      system && system.unclosedB.length > exceptions.length
        ? {
            detail: `${exceptions.length} exceptions are listed and open are: ${list(system.unclosedB)}.`,
            limit: system.unclosedB.length,
          }
        : null,
  }),
  rule({
    ...handed,
    code: 'handed-over.offered',
    sentence: 'Operations takes over what the coordinator has offered, with the same exceptions.',
    why: 'Two people answer for a hand-over: the one who says that it is complete and the one who takes it.',
    remedy: 'The coordinator offers the system again, with the exceptions as they are now.',
    clearedBy: ['coordinator'],
    events: ['handed-over'],
    test: ({ systemId, exceptions }, { make: { offered } }) => {
      if (!offered) return { detail: 'The coordinator has not offered it.' };
      if (offered.systemId !== systemId) return { detail: 'It was offered with another system.' };
      return sameWords(offered.exceptions, exceptions)
        ? null
        : {
            detail: `Offered with ${offered.exceptions.length === 0 ? 'no exception' : `the exceptions: ${list(offered.exceptions)}`}.`,
            limit: offered.exceptions.length,
          };
    },
  }),
  rule({
    ...handed,
    code: 'handed-over.two-persons',
    sentence: 'Who takes a system over is not who offered it.',
    why: 'Nobody hands over to himself.',
    remedy: 'Another person of operations takes it over.',
    clearedBy: ['operations'],
    events: ['handed-over'],
    test: (_payload, { make: { offered }, signerPersonId, persons }) =>
      offered?.by != null && offered.by === signerPersonId
        ? { detail: `${persons[offered.by]?.name ?? 'The same person'} offered it.` }
        : null,
  }),
  rule({
    ...handed,
    code: 'handed-over.signature',
    sentence: 'The coordinator signs the offer and operations the taking over, each with the exceptions.',
    why: 'From here operations answers for the system.',
    remedy: 'Sign with the secret, in the role that it takes.',
    clearedBy: ['coordinator', 'operations'],
    test: (_payload, { signed, actorRoles }, type) => {
      if (!signed) return { detail: 'The hand-over is not signed.' };
      const role = type === 'handed-over' ? 'operations' : 'coordinator';
      return actorRoles.includes(role)
        ? null
        : { detail: `Signed in the role ${actorRoles.join(', ') || 'none'}.`, limit: role };
    },
  }),
];
