import type { CommandAnswer, Payload, ShutdownEventType } from '@seatwell/contract';
import type { JointState, MakeState } from '@seatwell/workflow';
import { uuidv7 } from 'uuidv7';
import { accepted, type CommandOptions, command, type SignedIn } from './plant.ts';
import type { ListedJoint, Shutdown } from './shutdown.ts';

/** The joint as the server folded it. */
export async function jointState({ plant, shutdownId }: Shutdown, jointId: string): Promise<JointState> {
  const { rows } = await plant.db.query<{ state: JointState }>(
    'SELECT state FROM joint WHERE shutdown_id = $1 AND joint_id = $2',
    [shutdownId, jointId],
  );
  if (!rows[0]) throw new Error(`There is no joint ${jointId}.`);
  return rows[0].state;
}

export async function makeState(shutdown: Shutdown, joint: ListedJoint, makeId = joint.makeId): Promise<MakeState> {
  const state = await jointState(shutdown, joint.jointId);
  const make = state.makes.find((each) => each.makeId === makeId);
  if (!make) throw new Error(`${state.tag} has no make ${makeId}.`);
  return make;
}

/** One person's commands on one make; decisions carry the version as it stands. */
export function onMake(shutdown: Shutdown, joint: ListedJoint, makeId: string = joint.makeId) {
  const { plant, shutdownId } = shutdown;
  const send = async <T extends ShutdownEventType>(
    who: SignedIn,
    type: T,
    payload: Payload<T>,
    options: CommandOptions = {},
  ) =>
    command(plant, who, shutdownId, type, joint.jointId, payload, {
      makeId,
      versionSeen: (await jointState(shutdown, joint.jointId)).version,
      ...options,
    });
  const must = async <T extends ShutdownEventType>(
    who: SignedIn,
    type: T,
    payload: Payload<T>,
    options: CommandOptions = {},
  ): Promise<CommandAnswer> => accepted(await send(who, type, payload, options));
  return { send, must };
}

export type OnMake = ReturnType<typeof onMake>;

/** Lets the plant's clock run. */
export function wait(shutdown: Shutdown, minutes: number): void {
  shutdown.plant.now = new Date(shutdown.plant.now.getTime() + minutes * 60_000);
}

export const faces = (count: number, more: Partial<Payload<'faces-inspected'>['faces'][number]> = {}) =>
  Array.from({ length: count }, (_, index) => ({
    face: index + 1,
    condition: 'clean' as const,
    flatness_mm: null,
    imperfectionDepth_mm: null,
    imperfectionExtent_mm: null,
    ringGrooveTouched: null,
    accepted: true,
    photo: null,
    ...more,
  }));

export async function engineer(shutdown: Shutdown, joint: ListedJoint, makeId = joint.makeId): Promise<void> {
  const { must } = onMake(shutdown, joint, makeId);
  await must(shutdown.engineer, 'procedure-assigned', { procedureId: shutdown.procedureId, revision: 1 });
  await must(shutdown.engineer, 'target-approved', {
    basis: 'calculated',
    gasketDataId: shutdown.gasketDataId,
    lubricantId: shutdown.lubricantId,
    boltStress_MPa: null,
    acceptedShortfall: null,
  });
}

export async function release(shutdown: Shutdown, joint: ListedJoint, makeId = joint.makeId): Promise<void> {
  const permitId = uuidv7();
  accepted(
    await command(shutdown.plant, shutdown.operations, shutdown.shutdownId, 'permit-recorded', permitId, {
      permitId,
      number: `PTW-${permitId.slice(-5)}`,
      isolationReference: 'ISO-1',
      jointIds: [joint.jointId],
      validFrom: new Date(shutdown.plant.now.getTime() - 3_600_000).toISOString(),
      validUntil: new Date(shutdown.plant.now.getTime() + 36 * 3_600_000).toISOString(),
    }),
  );
  await onMake(shutdown, joint, makeId).must(shutdown.operations, 'break-released', { permitId, remark: null });
}

export const openingBy = (shutdown: Shutdown): Payload<'opened'> => ({
  zeroEnergyChecks: [
    { personId: shutdown.technician.personId, how: 'vent open, gauge at zero' },
    { personId: shutdown.mate.personId, how: 'drain open, no flow' },
  ],
  cautionShown: true,
  openEndsCovered: true,
  remark: null,
});

export const nippedUp = (
  shutdown: Shutdown,
  more: Partial<Payload<'nipped-up'>['gasket']> = {},
): Payload<'nipped-up'> => ({
  gasket: {
    family: 'spiral-wound',
    detail: null,
    size: 'NPS8',
    rating: '300',
    purpose: 'final',
    count: 1,
    batch: '27-0417',
    markingPhoto: null,
    ...more,
  },
  bolting: { grade: 'B7', condition: 'new', count: 12, temporary: false },
  lubricantId: shutdown.lubricantId,
  lubricant: 'test paste',
  alignment: { parallelism_mm: 0.3, offset_mm: 0.5, rotation_mm: 1, pullIn_percent: 3, gaps_mm: [3, 3.1, 3, 3.1] },
  remark: null,
});

/** From engineered and released to nipped up, as the crew does it. */
export async function openAndNipUp(
  shutdown: Shutdown,
  joint: ListedJoint,
  makeId = joint.makeId,
  gaskets = 1,
): Promise<void> {
  const { must } = onMake(shutdown, joint, makeId);
  await must(shutdown.technician, 'opened', openingBy(shutdown));
  wait(shutdown, 20);
  await must(shutdown.technician, 'faces-inspected', {
    faces: faces(2 * gaskets, { flatness_mm: 0.05 }),
    bolting: { condition: 'new', accepted: true },
    accepted: true,
    remark: null,
  });
  wait(shutdown, 20);
  const { purpose } = await makeState(shutdown, joint, makeId);
  await must(shutdown.technician, 'nipped-up', nippedUp(shutdown, { purpose, count: gaskets }));
}

const setting = (torque_Nm: number) => ({ torque_Nm, asEntered: { value: torque_Nm, unit: 'N·m' } });

/** The payload of one pass as the target wants it. */
export async function passOf(
  shutdown: Shutdown,
  joint: ListedJoint,
  pass: number,
  makeId = joint.makeId,
): Promise<Payload<'pass-recorded'>> {
  const make = await makeState(shutdown, joint, makeId);
  const torque_Nm = Math.round(make.target?.passes[pass - 1]?.torque_Nm ?? Number.NaN);
  const startedAt = shutdown.plant.now.toISOString();
  wait(shutdown, 20);
  return {
    pass,
    set: setting(torque_Nm),
    tools: { toolId: shutdown.wrenchId, pumpId: null, gaugeId: null },
    startedAt,
    endedAt: shutdown.plant.now.toISOString(),
    outcome: 'finished',
    lastBolt: null,
    boltsDone: 12,
    why: null,
    gapsChecked_mm: null,
  };
}

export async function finalRound(
  shutdown: Shutdown,
  joint: ListedJoint,
  makeId = joint.makeId,
): Promise<Payload<'final-round-recorded'>> {
  const { set, tools, startedAt, endedAt } = await passOf(shutdown, joint, 3, makeId);
  return { set, tools, startedAt, endedAt, rounds: 2, nutMoved: false };
}

export async function tighten(shutdown: Shutdown, joint: ListedJoint, makeId = joint.makeId): Promise<void> {
  const { must } = onMake(shutdown, joint, makeId);
  const by = { performedBy: [shutdown.technician.personId, shutdown.mate.personId] };
  for (const pass of [1, 2, 3])
    await must(shutdown.technician, 'pass-recorded', await passOf(shutdown, joint, pass, makeId), by);
  await must(shutdown.technician, 'final-round-recorded', await finalRound(shutdown, joint, makeId), by);
}

/** Releases the pack, records a reading with every given joint dry, and declares them proven. */
export async function testAndProve(shutdown: Shutdown, joints: readonly ListedJoint[]): Promise<void> {
  const { plant, shutdownId, packId, inspector, gaugeId } = shutdown;
  const version = async () =>
    (await plant.db.query('SELECT version FROM test_pack WHERE pack_id = $1', [packId])).rows[0]?.version as number;
  accepted(
    await command(
      plant,
      inspector,
      shutdownId,
      'pack-released',
      packId,
      {
        boundaryWalked: true,
        blindsRated: true,
        reliefValvesOut: true,
        metalTemperature_C: 18,
        gaugeIds: [gaugeId],
        remark: null,
      },
      { versionSeen: await version() },
    ),
  );
  wait(shutdown, 45);
  accepted(
    await command(plant, inspector, shutdownId, 'test-reading', packId, {
      readAt: plant.now.toISOString(),
      pressure_MPa: 3.02,
      pressureAsEntered: { value: 30.2, unit: 'bar' },
      metalTemperature_C: 18,
      gaugeIds: [gaugeId],
      held_min: 35,
      results: joints.map((joint) => ({
        jointId: joint.jointId,
        makeId: joint.makeIds.at(-1) ?? joint.makeId,
        result: 'no-leak' as const,
      })),
    }),
  );
  for (const joint of joints) {
    await onMake(shutdown, joint, joint.makeIds.at(-1) ?? joint.makeId).must(inspector, 'proven', {
      way: 'hydrotest',
      packId,
      remark: null,
    });
  }
}
