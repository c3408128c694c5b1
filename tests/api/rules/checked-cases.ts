import { DEFAULT_SETTINGS } from '@seatwell/workflow';
import { engage, type SignedIn } from '../support/plant.ts';
import { type JointOptions, listJoint, type Shutdown } from '../support/shutdown.ts';
import { type Point, Tale, taleTo } from '../support/tale.ts';
import { wait } from '../support/work.ts';
import { crewOf, keep, settings, tool, wrenchOnly } from './hire.ts';
import { asked, type RuleCases } from './rule-case.ts';

const at =
  (point: Point, options: JointOptions = {}) =>
  (shutdown: Shutdown) =>
    taleTo(shutdown, point, options);

const HOUR = 60;
const byQuality = ({ shutdown }: Tale) => ({ by: shutdown.inspector, change: { level: 'every' as const } });

/** A joint of criticality A, tight and witnessed. */
async function witnessed(shutdown: Shutdown): Promise<Tale> {
  const tale = await taleTo(shutdown, 'tight', { criticality: 'A' });
  await tale.tell('witnessed');
  return tale;
}

/** Another joint of the same pack, crew, procedure and shift, told to the same point. */
async function neighbour(tale: Tale, point: Point): Promise<Tale> {
  const joint = await listJoint(
    { ...tale.shutdown, systemId: tale.systemId },
    { makes: [{ packs: [{ packId: tale.packId, role: 'inside' }] }] },
  );
  return new Tale(tale.shutdown, joint, tale.packId, tale.systemId).goOn(point);
}

const inspectors = keep<SignedIn>();
const { criticalities } = DEFAULT_SETTINGS;
const levelOfC = (checkingLevel: 'self' | 'chargehand') => ({
  criticalities: { ...criticalities, C: { ...criticalities.C, checkingLevel } },
});

export const CHECKED_CASES: RuleCases = {
  'checked.level': asked('checked', witnessed, {
    fires: { says: ({ shutdown }) => ({ by: shutdown.chargehand, change: { level: 'chargehand' as const } }) },
    satisfied: { says: byQuality },
  }),
  'checked.lot-rejected': asked('checked', at('tight'), {
    fires: {
      first: async (tale) => {
        const other = await neighbour(tale, 'tight');
        await other.tell('checked', {
          ...byQuality(tale),
          change: { level: 'every', outcome: 'rejected', reason: 'Two nuts are loose' },
        });
      },
    },
    satisfied: { says: byQuality },
  }),
  'checked.self-by-two': asked(
    'checked',
    async (shutdown) => {
      await settings(shutdown, levelOfC('self'));
      return taleTo(shutdown, 'tight');
    },
    {
      fires: {
        says: ({ shutdown: { technician, inspector } }) => ({
          by: technician,
          change: { level: 'self' as const },
          performedBy: [technician.personId, inspector.personId],
        }),
      },
      satisfied: {
        says: ({ shutdown: { technician, mate } }) => ({
          by: technician,
          change: { level: 'self' as const },
          performedBy: [technician.personId, mate.personId],
        }),
      },
      lastly: (shutdown) => settings(shutdown, levelOfC('chargehand')),
    },
  ),
  'checked.chargehand-no-pass': asked('checked', at('every pass'), {
    fires: {
      first: (tale) =>
        tale.tell('final-round-recorded', {
          performedBy: [tale.shutdown.technician.personId, tale.shutdown.chargehand.personId],
        }),
    },
    satisfied: { says: ({ shutdown }) => ({ by: shutdown.inspector }) },
  }),
  'checked.not-of-the-crew': asked('checked', at('tight'), {
    fires: {
      first: async (tale) => {
        const crewId = await crewOf(tale.shutdown, tale.shutdown.inspector.personId);
        await tale.tell('make-assigned', { change: { crewId } });
      },
      says: byQuality,
    },
    satisfied: { first: (tale) => tale.tell('make-assigned'), says: byQuality },
  }),
  'checked.other-company': asked('checked', witnessed, {
    fires: {
      says: async (tale) => ({
        ...byQuality(tale),
        by: inspectors.set(
          tale,
          await engage(tale.shutdown.plant, 'inspector', 'Same Company', { company: 'Contractor' }),
        ),
      }),
    },
    satisfied: { says: byQuality },
  }),
  'checked.relaxation-not-overdue': asked('checked', witnessed, {
    fires: {
      first: async ({ shutdown }) => wait(shutdown, DEFAULT_SETTINGS.relaxationPassOverdue_h * HOUR),
      says: byQuality,
    },
    satisfied: { first: (tale) => tale.tell('relaxation-pass-recorded'), says: byQuality },
  }),
  'checked.witness-point': asked('checked', at('tight', { criticality: 'A' }), {
    satisfied: { first: (tale) => tale.tell('witnessed') },
  }),
  'checked.nothing-in-review': asked('checked', at('tight'), {
    fires: {
      first: async (tale) => {
        wait(tale.shutdown, 5 * HOUR);
        const { toolId } = await tool(tale.shutdown, 'torque-wrench', [450, 'N·m'], { validThrough: '2027-01-31' });
        const tools = { change: { tools: wrenchOnly(toolId) }, alreadyDone: true };
        await tale.tell('relaxation-pass-recorded', tools);
      },
    },
    satisfied: { first: (tale) => tale.tell('review-settled', { change: { outcome: 'reject-as-not-done' } }) },
  }),
  'checked.rejection-reason': asked('checked', at('tight'), {
    fires: { says: { change: { outcome: 'rejected' } } },
    satisfied: { says: { change: { outcome: 'rejected', reason: 'Two nuts without paint mark' } } },
  }),
};
