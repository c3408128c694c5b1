import type { Payload } from '@seatwell/contract';
import { uuidv7 } from 'uuidv7';
import { accepted, command, engage, type SignedIn, siteCommand } from '../support/plant.ts';
import { type ListedJoint, listJoint, type Shutdown } from '../support/shutdown.ts';
import { type Point, type Tale, taleTo } from '../support/tale.ts';
import { nippedUp } from '../support/work.ts';
import { keep } from './hire.ts';
import { asked, type RuleCases } from './rule-case.ts';

const at = (point: Point) => (shutdown: Shutdown) => taleTo(shutdown, point);

const joints = keep<ListedJoint>();
const ids = keep<string>();
const bothRoles = keep<SignedIn>();

/** Somebody who holds both roles, and still is one person. */
async function coordinatorOfOperations({ shutdown: { plant } }: Tale): Promise<SignedIn> {
  const both = await engage(plant, 'coordinator', 'Two Hats');
  const grantId = uuidv7();
  const grant = {
    grantId,
    accountId: both.accountId,
    role: 'operations' as const,
    reach: { kind: 'site' as const },
    endsOn: null,
  };
  accepted(await siteCommand(plant, plant.administrator, 'role-granted', grantId, grant));
  return both;
}

/** An item on the system of the tale. */
async function raise(tale: Tale, category: 'A' | 'B', text: string): Promise<void> {
  const { plant, technician, shutdownId } = tale.shutdown;
  const punchId = ids.set(tale, uuidv7());
  accepted(
    await command(plant, technician, shutdownId, 'punch-raised', punchId, {
      punchId,
      category,
      text,
      jointId: null,
      packId: null,
      systemId: tale.systemId,
      owner: null,
    }),
  );
}

const blind = (tale: Tale): Payload<'blind-planned'> => ({
  blindId: ids.set(tale, uuidv7()),
  number: `B-${tale.systemId.slice(-6)}`,
  type: 'spade',
  rating: '300',
  thickness_mm: 22,
  purpose: 'isolation',
  jointId: tale.jointId,
  packId: null,
  owner: null,
  outBy: null,
});

async function spadeIn(tale: Tale): Promise<void> {
  const { plant, coordinator, technician, shutdownId } = tale.shutdown;
  const planned = blind(tale);
  accepted(await command(plant, coordinator, shutdownId, 'blind-planned', planned.blindId, planned));
  const hung = { tagHung: true, photo: null, remark: null };
  accepted(await command(plant, technician, shutdownId, 'blind-in', planned.blindId, hung));
}

async function spadeOut(tale: Tale): Promise<void> {
  const { plant, technician, shutdownId } = tale.shutdown;
  accepted(await command(plant, technician, shutdownId, 'blind-out', ids.of(tale), { photo: null, remark: null }));
}

/** Closed and proven with bolts that do not stay. */
async function provenOnTemporaryBolts(shutdown: Shutdown): Promise<Tale> {
  const tale = await taleTo(shutdown, 'faces accepted');
  await tale.tell('nipped-up', { change: { bolting: { ...nippedUp(shutdown).bolting, temporary: true } } });
  return tale.goOn('proven', 'nipped up');
}

/** One more make, closed and proven with the bolts that stay. */
async function remake(tale: Tale): Promise<void> {
  const makeId = uuidv7();
  await tale.tell('make-planned', { change: { makeId } });
  tale.makeId = makeId;
  await tale.goOn('proven', 'listed');
}

export const HANDED_OVER_CASES: RuleCases = {
  'handed-over.joints-reconciled': asked('hand-over-offered', at('proven'), {
    fires: {
      first: async (tale) => joints.set(tale, await listJoint({ ...tale.shutdown, systemId: tale.systemId })),
    },
    satisfied: {
      first: async (tale) => {
        const { plant, coordinator, shutdownId } = tale.shutdown;
        const voided = { why: 'not-opened' as const, reason: 'Out of the scope' };
        const { jointId } = joints.of(tale);
        const seen = { versionSeen: 1 };
        accepted(await command(plant, coordinator, shutdownId, 'joint-voided', jointId, voided, seen));
      },
    },
  }),
  'handed-over.own-system': asked('hand-over-offered', at('proven'), {
    fires: {
      says: async ({ shutdown }) => ({ change: { systemId: (await taleTo(shutdown, 'proven')).systemId } }),
    },
  }),
  'handed-over.no-temporary-blinds': asked('hand-over-offered', at('proven'), {
    fires: { first: spadeIn },
    satisfied: { first: spadeOut },
  }),
  'handed-over.no-temporary-fittings': asked('hand-over-offered', provenOnTemporaryBolts, {
    satisfied: { first: remake },
  }),
  'handed-over.no-A-items': asked('hand-over-offered', at('proven'), {
    fires: { first: (tale) => raise(tale, 'A', 'Support missing') },
    satisfied: {
      first: async (tale) => {
        const { plant, inspector, shutdownId } = tale.shutdown;
        accepted(await command(plant, inspector, shutdownId, 'punch-closed', ids.of(tale), { how: 'Support set' }));
      },
    },
  }),
  'handed-over.exceptions-listed': asked('hand-over-offered', at('proven'), {
    fires: { first: (tale) => raise(tale, 'B', 'Paint') },
    satisfied: { says: { change: { exceptions: ['Paint'] } } },
  }),
  'handed-over.offered': asked('handed-over', at('proven'), {
    satisfied: { first: (tale) => tale.tell('hand-over-offered') },
  }),
  'handed-over.two-persons': asked('handed-over', at('proven'), {
    fires: {
      first: async (tale) => {
        const both = await coordinatorOfOperations(tale);
        await tale.tell('hand-over-offered', { by: bothRoles.set(tale, both) });
      },
      says: (tale) => ({ by: bothRoles.of(tale) }),
    },
    satisfied: { says: {} },
  }),
  // The secret is asked for before the rules are.
  'handed-over.signature': asked('hand-over-offered', at('proven'), {
    fires: { says: { secret: null } },
    problem: 'signature-missing',
  }),
};
