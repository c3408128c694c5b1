import type { CountsByStage, JointRow, SystemPage, SystemRef, SystemsAnswer } from '@seatwell/contract';
import { type JointState, temporaryFittingOf } from '@seatwell/workflow';
import { Problem } from '../../platform/errors/problem.ts';
import { loadSystemFacts } from '../joints/facts-of-system.ts';
import { type JointRowColumns, jointRowsSql, toJointRow } from '../joints/joint-row.ts';
import { punchRows } from '../punch-items/queries.ts';
import { actionsOf } from '../reading/actions.ts';
import { namesOf } from '../reading/names.ts';
import { jointRefs, loadPlaces, type Places, placeOf } from '../reading/places.ts';
import type { Reading } from '../reading/reading.ts';
import { noCounts, rollupOf, totalOf } from '../reading/stage-counts.ts';
import { zerosOfSystems } from './zeros.ts';

type Summary = SystemsAnswer['rows'][number];

function summary(
  system: SystemRef & { areaId: string | null },
  places: Places,
  stages: CountsByStage,
  zeros: Summary['zeros'],
): Summary {
  const total = totalOf(stages);
  return {
    systemId: system.systemId,
    code: system.code,
    name: system.name,
    area: placeOf(places.areas, system.areaId),
    total,
    stages,
    zeros,
    handedOver: total > 0 && stages['handed-over'] === total,
  };
}

/** `GET /systems`: what is not zero yet, of every system. */
export async function systems(reading: Reading): Promise<SystemsAnswer> {
  const { actor, shutdownId } = reading;
  const [places, rollup, zeros] = await Promise.all([
    loadPlaces(reading),
    rollupOf(reading, 'system'),
    zerosOfSystems(reading),
  ]);
  return {
    rows: [...places.systems.values()].map((system) =>
      summary(system, places, rollup.get(system.systemId) ?? noCounts(), zeros(system.systemId)),
    ),
    actions: actionsOf(actor, ['system-listed'], { shutdownId }),
  };
}

async function jointsOf(reading: Reading, systemId: string): Promise<{ row: JointRow; whole: JointState }[]> {
  const page = `SELECT j.* FROM joint j WHERE j.site_id = $1 AND j.shutdown_id = $2 AND j.system_id = $3
    AND j.voided IS NULL AND j.make_count > 0`;
  const { rows } = await reading.db.query<JointRowColumns & { whole: JointState }>({
    name: 'joints-of-system',
    text: jointRowsSql(page, 'p.tag_key, p.joint_id', ', p.state AS whole'),
    values: [reading.siteId, reading.shutdownId, systemId],
  });
  return rows.map((columns) => ({ row: toJointRow(columns, reading), whole: columns.whole }));
}

async function blindsIn(reading: Reading, systemId: string): Promise<SystemPage['temporaryBlindsIn']> {
  const { rows } = await reading.db.query<{ blindId: string; number: string; jointId: string | null }>({
    name: 'blinds-in-system',
    text: `SELECT b.blind_id AS "blindId", b.number, b.joint_id AS "jointId" FROM blind b
      JOIN joint j ON j.site_id = b.site_id AND j.shutdown_id = b.shutdown_id AND j.joint_id = b.joint_id
      WHERE b.site_id = $1 AND b.shutdown_id = $2 AND j.system_id = $3 AND j.voided IS NULL
        AND b.in_at IS NOT NULL AND b.out_at IS NULL AND b.type <> 'spectacle' ORDER BY b.number COLLATE "C"`,
    values: [reading.siteId, reading.shutdownId, systemId],
  });
  const joints = await jointRefs(
    reading,
    rows.map((row) => row.jointId),
  );
  return rows.map(({ jointId, ...row }) => ({ ...row, joint: placeOf(joints, jointId) }));
}

/** `GET /systems/:systemId` @throws Problem `not-found`: another shutdown's system is as unknown as any */
export async function systemPage(reading: Reading, systemId: string): Promise<SystemPage> {
  const { db, siteId, shutdownId, actor } = reading;
  const facts = await loadSystemFacts(db, siteId, shutdownId, systemId);
  if (!facts) throw new Problem('not-found', `This shutdown has no system ${systemId}.`);
  const [places, rollup, joints, temporaryBlindsIn, punch] = await Promise.all([
    loadPlaces(reading),
    rollupOf(reading, 'system'),
    jointsOf(reading, systemId),
    blindsIn(reading, systemId),
    punchRows(reading, { closed: 'no', systemId, jointIds: await jointIdsOf(reading, systemId) }),
  ]);
  const system = placeOf(places.systems, systemId);
  if (!system) throw new Problem('not-found', `This shutdown has no system ${systemId}.`);
  const notProven = new Set(facts.notProven);
  const zeros = {
    notProven: facts.notProven.length,
    temporaryBlindsIn: facts.temporaryBlindsIn.length,
    temporaryFittings: facts.temporaryFittings.length,
    unclosedA: facts.unclosedA.length,
    unclosedB: facts.unclosedB.length,
  };
  const stages = rollup.get(systemId) ?? noCounts();
  return {
    ...summary(system, places, stages, zeros),
    notProven: joints
      .filter(({ row }) => notProven.has(row.tag))
      .map(({ row: { jointId, tag, stage, waitsFor } }) => ({ jointId, tag, stage, waitsFor })),
    temporaryBlindsIn,
    temporaryFittings: joints.flatMap(({ row: { jointId, tag }, whole }) => {
      const fitting = temporaryFittingOf(whole);
      return fitting ? [{ jointId, tag, gasket: fitting.gasket, bolts: fitting.bolts }] : [];
    }),
    unclosedA: punch.filter((item) => item.category === 'A'),
    unclosedB: punch.filter((item) => item.category === 'B'),
    joints: joints.flatMap(({ row: { jointId, tag, makeId, version, stage }, whole }) =>
      makeId ? [{ jointId, tag, makeId, version, stage, offered: offerOn(whole, makeId) !== null }] : [],
    ),
    offer: await latestOffer(reading, joints),
    actions: actionsOf(
      actor,
      ['hand-over-offered', 'handed-over', 'taken-back', 'punch-raised'],
      { shutdownId, areaId: system.areaId },
      (type) => {
        if (type !== 'hand-over-offered' && type !== 'handed-over') return null;
        const open = Object.entries(zeros).filter(([name, count]) => name !== 'unclosedB' && count > 0);
        if (open.length === 0) return null;
        return {
          code: 'not-zero',
          message: `Before hand-over these must be zero: ${open.map(([name, count]) => `${name} ${count}`).join(', ')}.`,
        };
      },
    ),
  };
}

const offerOn = (joint: JointState, makeId: string | null) =>
  joint.makes.find((make) => make.makeId === makeId)?.offered ?? null;

async function latestOffer(
  { db, siteId }: Reading,
  joints: readonly { row: JointRow; whole: JointState }[],
): Promise<SystemPage['offer']> {
  const [latest] = joints
    .flatMap(({ row, whole }) => offerOn(whole, row.makeId) ?? [])
    .sort((a, b) => b.at.localeCompare(a.at));
  if (!latest) return null;
  const names = await namesOf(db, siteId, [latest.by]);
  return { by: names.maybe(latest.by), at: latest.at, exceptions: [...latest.exceptions] };
}

async function jointIdsOf({ db, siteId, shutdownId }: Reading, systemId: string): Promise<string[]> {
  const { rows } = await db.query<{ joint_id: string }>({
    name: 'joint-ids-of-system',
    text: 'SELECT joint_id FROM joint WHERE site_id = $1 AND shutdown_id = $2 AND system_id = $3 AND voided IS NULL',
    values: [siteId, shutdownId, systemId],
  });
  return rows.map((row) => row.joint_id);
}
