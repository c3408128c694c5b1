import type { Payload } from '@seatwell/contract';
import { accepted, command } from '../support/plant.ts';
import { specification } from '../support/sample-plant.ts';
import type { JointOptions, Shutdown } from '../support/shutdown.ts';
import { recordPermit } from '../support/sound.ts';
import { type Point, type Tale, taleTo } from '../support/tale.ts';
import { faces, openingBy } from '../support/work.ts';
import { approve, draft, hire, keep, otherProcedure, qualify } from './hire.ts';
import { asked, type RuleCase, type RuleCases } from './rule-case.ts';

/** A mark that is not deep; how far it reaches decides. */
const scored = { condition: 'scored' as const, imperfectionDepth_mm: 0.2 };

const at =
  (point: Point, options: JointOptions = {}) =>
  (shutdown: Shutdown) =>
    taleTo(shutdown, point, options);

const assigns = (procedureId: string) => ({ change: { procedureId, revision: 1 } });

/** A procedure made for other joints is assigned; the remedy is the one that fits. */
const doesNotFit = (applies: Parameters<typeof draft>[1], change: Parameters<typeof draft>[2] = {}): RuleCase =>
  asked('procedure-assigned', at('listed'), {
    fires: { says: async ({ shutdown }) => assigns(await otherProcedure(shutdown, applies, change)) },
  });

const drafted = keep<string>();
const newcomer = keep<string>();

/** Somebody works along who is not qualified; the remedy is the recorded qualification. */
const unqualified = (type: 'opened' | 'faces-inspected', point: Point, what: 'disassembly' | 'face-inspection') =>
  asked(type, at(point), {
    fires: {
      says: async (tale) => ({
        performedBy: [tale.shutdown.technician.personId, newcomer.set(tale, await hire(tale.shutdown))],
      }),
    },
    satisfied: {
      first: (tale) => qualify(tale.shutdown, newcomer.of(tale), what),
      says: (tale) => ({ performedBy: [tale.shutdown.technician.personId, newcomer.of(tale)] }),
    },
  });

const calculated = ({ shutdown }: Tale, more: Partial<Payload<'target-approved'>>) => ({
  change: {
    basis: 'calculated',
    gasketDataId: shutdown.gasketDataId,
    lubricantId: shutdown.lubricantId,
    ...more,
  } as Partial<Payload<'target-approved'>>,
});

const ringJoint = specification({
  flange: { standard: 'ASME-B16.5', size: 'NPS8', rating: '300', facing: 'ring-joint' },
});

export const ENGINEERED_CASES: RuleCases = {
  'engineered.procedure-approved': asked('procedure-assigned', at('listed'), {
    fires: { says: async (tale) => assigns(drafted.set(tale, await draft(tale.shutdown, {}))) },
    satisfied: {
      first: (tale) => approve(tale.shutdown, drafted.of(tale)),
      says: (tale) => assigns(drafted.of(tale)),
    },
  }),
  'engineered.kind': doesNotFit({ kinds: ['clamp-connector'] }),
  'engineered.bolt-count': doesNotFit({ leastBolts: 16 }),
  'engineered.rating': doesNotFit({ ratings: ['600'] }),
  'engineered.gasket-family': doesNotFit({ gasketFamilies: ['ring-joint'] }),
  'engineered.tools': doesNotFit({}, { tools: 5 }),
  'engineered.work-scope': asked('procedure-assigned', at('listed', { makes: [{ workScope: 'hot-bolting' }] }), {
    satisfied: {
      says: async ({ shutdown }) => assigns(await otherProcedure(shutdown, { workScopes: ['hot-bolting'] })),
    },
  }),
  'engineered.target-for-stack': asked('target-approved', at('listed'), {
    beside: ['engineered.procedure-approved', 'engineered.procedure-first'],
    satisfied: { first: (tale) => tale.tell('procedure-assigned') },
  }),
  'engineered.target-window': asked('target-approved', at('procedure assigned'), {
    fires: { says: (tale) => calculated(tale, { boltStress_MPa: 30 } as never) },
    satisfied: {
      says: (tale) =>
        calculated(tale, { boltStress_MPa: 30, acceptedShortfall: 'Low pressure, tested before' } as never),
    },
  }),
};

export const RELEASED_CASES: RuleCases = {
  'released.permit': asked('break-released', at('engineered'), {
    fires: {
      says: async (tale) => {
        const other = await taleTo(tale.shutdown, 'listed');
        return { change: { permitId: await recordPermit(tale, other.jointId) } };
      },
    },
  }),
  // The secret is asked for before the rules are.
  'released.signature': asked('break-released', at('engineered'), {
    fires: { says: { secret: null } },
    problem: 'signature-missing',
  }),
};

export const OPEN_CASES: RuleCases = {
  'open.zero-energy-checks': asked('opened', at('released'), {
    fires: {
      says: ({ shutdown }) => ({ change: { zeroEnergyChecks: openingBy(shutdown).zeroEnergyChecks.slice(0, 1) } }),
    },
  }),
  'open.zero-energy-by-two': asked('opened', at('released'), {
    fires: {
      says: ({ shutdown }) => {
        const [first, second] = openingBy(shutdown).zeroEnergyChecks;
        if (!first || !second) throw new Error('The sound opening names two checks.');
        return { change: { zeroEnergyChecks: [first, { ...second, personId: first.personId }] } };
      },
    },
  }),
  'open.first-break-caution': asked('opened', at('released'), { fires: { says: { change: { cautionShown: false } } } }),
  'open.qualified': unqualified('opened', 'released', 'disassembly'),
  'open.planned-crew': asked('opened', at('released'), {
    fires: {
      says: async ({ shutdown }) => {
        const stranger = await hire(shutdown);
        await qualify(shutdown, stranger, 'disassembly');
        return { performedBy: [stranger] };
      },
    },
  }),
  'open.permit-in-force': asked('opened', at('released'), {
    fires: {
      first: async (tale) => {
        const { plant, operations, shutdownId } = tale.shutdown;
        const { permitId } = await tale.make();
        const reason = { reason: 'The isolation is broken' };
        accepted(await command(plant, operations, shutdownId, 'permit-withdrawn', permitId ?? '', reason));
      },
    },
    satisfied: { first: (tale) => tale.tell('break-released') },
  }),
  'open.earlier-make-closed': asked(
    'opened',
    async (shutdown) => {
      const tale = await taleTo(shutdown, 'open', { makes: [{ purpose: 'spade-in' }, {}] });
      tale.makeId = tale.joint.makeIds[1] ?? '';
      return tale.goOn('released', 'listed');
    },
    {
      satisfied: {
        first: async (tale) => {
          const next = tale.makeId;
          tale.makeId = tale.joint.makeId;
          await tale.goOn('tight', 'open');
          tale.makeId = next;
        },
      },
    },
  ),
};

export const FACES_CASES: RuleCases = {
  'faces.every-face': asked('faces-inspected', at('open'), { fires: { says: { change: { faces: faces(1) } } } }),
  'faces.measured': asked('faces-inspected', at('open', { criticality: 'A' }), {
    fires: { says: { change: { faces: faces(2) } } },
  }),
  'faces.flatness': asked('faces-inspected', at('open'), {
    fires: { says: { change: { faces: faces(2, { flatness_mm: 0.3 }) } } },
    satisfied: { says: { change: { faces: faces(2, { flatness_mm: 0.2 }) } } },
  }),
  'faces.imperfections': asked('faces-inspected', at('open'), {
    fires: { says: { change: { faces: faces(2, { ...scored, imperfectionExtent_mm: 40 }) } } },
    satisfied: { says: { change: { faces: faces(2, { ...scored, imperfectionExtent_mm: 1 }) } } },
  }),
  'faces.ring-groove': asked('faces-inspected', at('open', { specification: ringJoint }), {
    fires: { says: { change: { faces: faces(2, { ringGrooveTouched: false }) } } },
  }),
  'faces.bolting': asked('faces-inspected', at('open'), {
    fires: { says: { change: { bolting: { condition: 'reused', accepted: false } } } },
  }),
  'faces.qualified': unqualified('faces-inspected', 'open', 'face-inspection'),
};
