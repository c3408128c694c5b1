import type { Payload, ShutdownEventType } from '@seatwell/contract';
import { uuidv7 } from 'uuidv7';
import { accepted, command, type SignedIn } from './plant.ts';
import { finalMake } from './sample-plant.ts';
import { listJoint } from './shutdown.ts';
import type { Tale } from './tale.ts';
import { faces, nippedUp, openingBy } from './work.ts';

export interface Sound<T extends ShutdownEventType> {
  readonly by: SignedIn;
  readonly payload: Payload<T>;
  readonly subjectId?: string;
  readonly versionSeen?: number;
  readonly performedBy?: readonly string[];
}

/** A permit that operations records for the joint of the tale (or another), from an hour ago to the next evening. */
export async function recordPermit(tale: Tale, jointId: string = tale.jointId): Promise<string> {
  const { plant, operations, shutdownId } = tale.shutdown;
  const permitId = uuidv7();
  accepted(
    await command(plant, operations, shutdownId, 'permit-recorded', permitId, {
      permitId,
      number: `PTW-${permitId.slice(-5)}`,
      isolationReference: 'ISO-1',
      jointIds: [jointId],
      validFrom: new Date(plant.now.getTime() - 3_600_000).toISOString(),
      validUntil: new Date(plant.now.getTime() + 36 * 3_600_000).toISOString(),
    }),
  );
  return permitId;
}

const theCrew = ({ shutdown }: Tale): string[] => [shutdown.technician.personId, shutdown.mate.personId];

/** What the tool is set to for a pass, and twelve minutes that ended now. */
async function tightening(tale: Tale, pass: number) {
  const { target } = await tale.make();
  const torque_Nm = Math.round(target?.passes[pass - 1]?.torque_Nm ?? 150);
  const { now } = tale.shutdown.plant;
  return {
    set: { torque_Nm, asEntered: { value: torque_Nm, unit: 'N·m' } },
    tools: { toolId: tale.shutdown.wrenchId, pumpId: null, gaugeId: null },
    startedAt: new Date(now.getTime() - 12 * 60_000).toISOString(),
    endedAt: now.toISOString(),
  };
}

async function packVersion({ shutdown, packId }: Tale): Promise<number> {
  const { rows } = await shutdown.plant.db.query('SELECT version FROM test_pack WHERE pack_id = $1', [packId]);
  return rows[0]?.version as number;
}

/** Who rightly checks this joint, and at which level. */
const check = ({ shutdown }: Tale, criticality: string): { by: SignedIn; level: 'every' | 'chargehand' } =>
  criticality === 'C' ? { by: shutdown.chargehand, level: 'chargehand' } : { by: shutdown.inspector, level: 'every' };

type SoundOf = { readonly [T in ShutdownEventType]: (tale: Tale) => Promise<Sound<T>> };

const none = async (): Promise<never> => {
  throw new Error('This event has no sound form on one joint: send it with `command`.');
};

/** For each event, what the right person says about the joint here and now so that no rule stops it. */
export const SOUND: SoundOf = {
  ...(Object.fromEntries(
    [
      'shutdown-opened',
      'settings-changed',
      'area-listed',
      'system-listed',
      'crew-listed',
      'permit-recorded',
      'permit-withdrawn',
      'talk-held',
      'punch-closed',
      'joint-listed',
      'joint-found',
      'item-registered',
      'item-moved',
      'blind-planned',
      'blind-in',
      'blind-out',
      'spectacle-turned',
      'pack-planned',
    ].map((type) => [type, none]),
  ) as unknown as SoundOf),
  'punch-raised': async ({ shutdown, jointId }) => {
    const punchId = uuidv7();
    return {
      by: shutdown.inspector,
      subjectId: punchId,
      payload: { punchId, category: 'A', text: 'Stud too short', jointId, packId: null, systemId: null, owner: null },
    };
  },
  'joint-specified': async ({ shutdown }) => ({
    by: shutdown.coordinator,
    payload: { reason: 'The register was wrong' },
  }),
  'joint-merged': async ({ shutdown }) => ({
    by: shutdown.coordinator,
    payload: { intoJointId: (await listJoint(shutdown)).jointId, reason: 'The same joint' },
  }),
  'joint-voided': async ({ shutdown }) => ({
    by: shutdown.coordinator,
    payload: { why: 'not-opened', reason: 'Not in the scope any more' },
  }),
  'make-planned': async ({ shutdown, packId }) => ({
    by: shutdown.coordinator,
    payload: finalMake(uuidv7(), { number: 2, crewId: shutdown.crewId, packs: [{ packId, role: 'inside' }] }),
  }),
  'make-assigned': async ({ shutdown }) => ({
    by: shutdown.coordinator,
    payload: { crewId: shutdown.crewId, plannedOn: null },
  }),
  'make-cancelled': async ({ shutdown }) => ({ by: shutdown.coordinator, payload: { reason: 'Not needed' } }),
  'procedure-assigned': async ({ shutdown }) => ({
    by: shutdown.engineer,
    payload: { procedureId: shutdown.procedureId, revision: 1 },
  }),
  'target-approved': async ({ shutdown }) => ({
    by: shutdown.engineer,
    payload: {
      basis: 'calculated',
      gasketDataId: shutdown.gasketDataId,
      lubricantId: shutdown.lubricantId,
      boltStress_MPa: null,
      acceptedShortfall: null,
    },
  }),
  'hold-placed': async ({ shutdown }) => ({
    by: shutdown.engineer,
    payload: { holdId: uuidv7(), reason: 'The gasket drawing is being asked about', releasedBy: 'engineer' },
  }),
  'hold-released': async (tale) => ({
    by: tale.shutdown.engineer,
    payload: { holdId: (await tale.state()).holds[0]?.holdId ?? uuidv7(), reason: 'The drawing is right' },
  }),
  'break-released': async (tale) => ({
    by: tale.shutdown.operations,
    payload: { permitId: await recordPermit(tale), remark: null },
  }),
  opened: async (tale) => ({
    by: tale.shutdown.technician,
    payload: openingBy(tale.shutdown),
    performedBy: theCrew(tale),
  }),
  'faces-inspected': async (tale) => {
    const { specification } = await tale.state();
    const ring = specification.flange.facing === 'ring-joint';
    return {
      by: tale.shutdown.technician,
      payload: {
        faces: faces(2 * specification.gasket.count, { flatness_mm: 0.05, ringGrooveTouched: ring ? true : null }),
        bolting: { condition: 'new', accepted: true },
        accepted: true,
        remark: null,
      },
    };
  },
  'nipped-up': async (tale) => {
    const { purpose, gasket } = await tale.make();
    const { family, count } = gasket ?? (await tale.state()).specification.gasket;
    return { by: tale.shutdown.technician, payload: nippedUp(tale.shutdown, { purpose, family, count }) };
  },
  'pass-recorded': async (tale) => {
    const { nextPass } = await tale.make();
    const pass = Math.min(nextPass, 3);
    return {
      by: tale.shutdown.technician,
      performedBy: theCrew(tale),
      payload: {
        pass,
        ...(await tightening(tale, pass)),
        outcome: 'finished',
        lastBolt: null,
        boltsDone: 12,
        why: null,
        gapsChecked_mm: null,
      },
    };
  },
  'final-round-recorded': async (tale) => ({
    by: tale.shutdown.technician,
    performedBy: theCrew(tale),
    payload: { ...(await tightening(tale, 3)), rounds: 2, nutMoved: false },
  }),
  'relaxation-pass-recorded': async (tale) => ({
    by: tale.shutdown.technician,
    performedBy: theCrew(tale),
    payload: { ...(await tightening(tale, 3)), nutsMoved: 3 },
  }),
  'stud-replaced': async ({ shutdown }) => ({
    by: shutdown.technician,
    payload: { bolts: [3], grade: 'B7', reason: 'Thread damaged' },
  }),
  loosened: async ({ shutdown }) => ({
    by: shutdown.technician,
    payload: { extent: 'all', bolts: [], reason: 'To be made again' },
  }),
  'leak-found': async ({ shutdown, packId }) => ({
    by: shutdown.technician,
    payload: {
      when: 'test',
      where: 'between bolts 3 and 4',
      underPressure: true,
      packId,
      punchId: uuidv7(),
      remark: 'Weeps under test',
    },
  }),
  checked: async (tale) => {
    const { by, level } = check(tale, (await tale.state()).criticality);
    return { by, payload: { level, outcome: 'accepted', reason: null } };
  },
  witnessed: async ({ shutdown }) => ({ by: shutdown.witness, payload: { point: 'tightening', remark: null } }),
  'witness-waived': async ({ shutdown }) => ({
    by: shutdown.witness,
    payload: { point: 'tightening', reason: 'Seen on the neighbour' },
  }),
  'deviation-accepted': async ({ shutdown }) => ({
    by: shutdown.inspector,
    payload: { rule: 'nipped-up.alignment', reason: 'Within what the pipe takes', until: null },
  }),
  proven: async (tale) => ({
    by: tale.shutdown.inspector,
    payload: { way: (await tale.make()).proof, packId: tale.packId, remark: null },
  }),
  'hand-over-offered': async ({ shutdown, systemId }) => ({
    by: shutdown.coordinator,
    payload: { systemId, exceptions: [] },
  }),
  'handed-over': async ({ shutdown, systemId }) => ({
    by: shutdown.operations,
    payload: { systemId, exceptions: [] },
  }),
  'taken-back': async ({ shutdown }) => ({ by: shutdown.coordinator, payload: { reason: 'Leaks at start-up' } }),
  'pack-released': async (tale) => ({
    by: tale.shutdown.inspector,
    subjectId: tale.packId,
    versionSeen: await packVersion(tale),
    payload: {
      boundaryWalked: true,
      blindsRated: true,
      reliefValvesOut: true,
      metalTemperature_C: 18,
      gaugeIds: [tale.shutdown.gaugeId],
      remark: null,
    },
  }),
  'test-reading': async ({ shutdown, packId, jointId, makeId }) => ({
    by: shutdown.inspector,
    subjectId: packId,
    payload: {
      readAt: shutdown.plant.now.toISOString(),
      pressure_MPa: 3.02,
      pressureAsEntered: { value: 30.2, unit: 'bar' },
      metalTemperature_C: 18,
      gaugeIds: [shutdown.gaugeId],
      held_min: 35,
      results: [{ jointId, makeId, result: 'no-leak' }],
    },
  }),
  corrected: async (tale) => ({
    by: tale.shutdown.technician,
    payload: {
      eventId: tale.events.opened ?? uuidv7(),
      payload: openingBy(tale.shutdown) as unknown as Record<string, unknown>,
      reason: 'Written down wrongly',
    },
  }),
  revoked: async (tale) => ({
    by: tale.shutdown.inspector,
    payload: { eventId: tale.events.proven ?? uuidv7(), reason: 'The gauge was read wrongly' },
  }),
  'review-settled': async (tale) => ({
    by: tale.shutdown.engineer,
    payload: {
      eventId: (await tale.make()).waiting[0]?.eventId ?? uuidv7(),
      outcome: 'accept',
      reason: 'Seen on the joint',
      punchId: null,
    },
  }),
};
