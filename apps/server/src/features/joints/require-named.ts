import type { EventType, MakePlan, Payload } from '@seatwell/contract';
import { Problem } from '../../platform/errors/problem.ts';
import type { DecisionInput } from '../recording/decision.ts';
import { shutdownOf } from '../recording/shutdown-of.ts';
import { FactsLoader, type NamedThings } from './facts.ts';

type Named = Partial<Record<NamedThings, readonly (string | null | undefined)[]>>;

const ofMakes = (makes: readonly MakePlan[]): Named => ({
  crew: makes.map((make) => make.crewId),
  pack: makes.flatMap((make) => make.packs.map((pack) => pack.packId)),
});

/** What of the shutdown an event names by its id; the others name nothing that is looked up here. */
const NAMED: { readonly [T in EventType]?: (payload: Payload<T>) => Named } = {
  'joint-listed': ({ whereabouts, makes }) => ({
    area: [whereabouts.areaId],
    system: [whereabouts.systemId],
    ...ofMakes(makes),
  }),
  'joint-found': ({ areaId }) => ({ area: [areaId] }),
  'joint-specified': ({ whereabouts }) => ({ area: [whereabouts?.areaId], system: [whereabouts?.systemId] }),
  'joint-merged': ({ intoJointId }) => ({ joint: [intoJointId] }),
  'make-planned': (plan) => ofMakes([plan]),
  'make-assigned': ({ crewId }) => ({ crew: [crewId] }),
  'leak-found': ({ packId }) => ({ pack: [packId] }),
  'system-listed': ({ areaId }) => ({ area: [areaId] }),
  'pack-planned': ({ areaId, systemId }) => ({ area: [areaId], system: [systemId] }),
  'punch-raised': ({ packId, systemId }) => ({ pack: [packId], system: [systemId] }),
  'blind-planned': ({ packId }) => ({ pack: [packId] }),
  'talk-held': ({ crewId }) => ({ crew: [crewId] }),
};

/**
 * Areas, systems, crews, packs and joints that an event names must be of its own shutdown.
 * @throws Problem `not-found` naming those that are not; `bad-input` for a joint merged with itself
 */
export async function requireNamed(
  facts: FactsLoader,
  type: EventType,
  payload: unknown,
  jointId: string | null,
): Promise<void> {
  const naming = NAMED[type] as ((payload: unknown) => Named) | undefined;
  if (!naming) return;
  for (const [what, ids] of Object.entries(naming(payload)) as [NamedThings, readonly (string | null)[]][]) {
    const named = [...new Set(ids.filter((id): id is string => typeof id === 'string'))];
    if (what === 'joint' && jointId && named.includes(jointId))
      throw new Problem('bad-input', 'A joint is merged with another joint, not with itself.', [
        { path: 'payload.intoJointId', code: 'itself', message: 'Name the joint that the register has.' },
      ]);
    const known = named.length > 0 ? await facts.known(what, named) : new Set();
    const unknown = named.filter((id) => !known.has(id));
    if (unknown.length > 0)
      throw new Problem(
        'not-found',
        `This shutdown has no ${what} ${unknown[0]}.`,
        unknown.slice(0, 50).map((id) => ({ path: 'payload', code: `unknown-${what}`, message: id })),
      );
  }
}

/** The same for a command that is not about one joint. */
export const requireNamedIn = (input: DecisionInput): Promise<void> => {
  const { siteId, shutdownId } = shutdownOf(input);
  return requireNamed(new FactsLoader(input.tx, siteId, shutdownId), input.type, input.payload, null);
};
