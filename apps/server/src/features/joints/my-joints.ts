import type { MyJointRow, MyJointsAnswer, Role } from '@seatwell/contract';
import type { JointState } from '@seatwell/workflow';
import type { ReachTarget } from '../../platform/access/allows.ts';
import type { Grant } from '../../platform/sign-in/sessions.ts';
import { namesOf } from '../reading/names.ts';
import { loadPlaces, type Places, placeOf } from '../reading/places.ts';
import type { Reading } from '../reading/reading.ts';
import { restartOf } from '../reading/restart.ts';
import { doable } from './doable.ts';
import { type JointRowColumns, jointRowsSql, toJointRow } from './joint-row.ts';
import { ownSteps } from './make-actions.ts';
import { Values } from './register-filters.ts';
import { shownMake } from './shown-make.ts';

const AT_MOST = 500;

/** Roles whose own list is what waits for them. */
const WAITED_FOR: readonly Role[] = ['inspector', 'engineer', 'operations', 'witness', 'coordinator'];

interface MineColumns extends JointRowColumns {
  readonly whole: JointState;
}

/** What waits for a role that the caller holds, as far as the grant of it reaches. */
function waitsForGrant({ role, reach }: Grant, shutdownId: string, values: Values): string[] {
  if (!WAITED_FOR.includes(role)) return [];
  const by = () => `j.waits_for_data->>'by' = ${values.add(role)}`;
  switch (reach.kind) {
    case 'site':
      return [by()];
    case 'shutdown':
      return reach.id === shutdownId ? [by()] : [];
    case 'area':
      return [`(${by()} AND j.area_id = ${values.add(reach.id)}::uuid)`];
    case 'pack':
      return [`(${by()} AND j.pack_ids @> ARRAY[${values.add(reach.id)}::uuid])`];
    case 'crew':
    case 'own-assignments':
      return [];
  }
}

/** Joints of the caller's crews, and what waits for the caller's roles; the part tight ones never fall off the end. */
async function mine(reading: Reading, crewIds: readonly string[]): Promise<MineColumns[]> {
  const { siteId, shutdownId, actor } = reading;
  const values = new Values();
  const own = [
    `j.crew_id = ANY(${values.add(crewIds)}::uuid[])`,
    ...actor.grants.flatMap((grant) => waitsForGrant(grant, shutdownId, values)),
  ];
  const order = (table: string) =>
    `(${table}.stage = 'part-tight') DESC, ${table}.planned_on NULLS LAST, ${table}.tag_key, ${table}.joint_id`;
  const page = `SELECT j.* FROM joint j WHERE j.site_id = ${values.add(siteId)} AND j.shutdown_id = ${values.add(shutdownId)}
      AND j.voided IS NULL AND j.make_id IS NOT NULL AND j.waits_for <> 'nothing' AND (${own.join(' OR ')})
    ORDER BY ${order('j')} LIMIT ${AT_MOST + 1}`;
  const { rows } = await reading.db.query<MineColumns>(
    jointRowsSql(page, order('p'), ', p.state AS whole'),
    values.list,
  );
  return rows;
}

function reachTarget(reading: Reading, places: Places, joint: JointState): ReachTarget {
  const make = shownMake(joint);
  return {
    shutdownId: reading.shutdownId,
    areaId: joint.whereabouts.areaId,
    packIds: make?.packs.map((pack) => pack.packId) ?? [],
    crewId: make?.crewId ?? null,
    assignedPersonIds: placeOf(places.crews, make?.crewId ?? null)?.personIds ?? [],
  };
}

const ORDER: readonly MyJointRow['can'][] = ['part-tight', 'now', 'waiting'];

/** The caller's joints in the order of what can be done now. */
export async function myJoints(reading: Reading): Promise<MyJointsAnswer> {
  const { actor, shutdown, now } = reading;
  const places = await loadPlaces(reading);
  const crews = [...places.crews.values()].filter((crew) => crew.personIds.includes(actor.personId));
  const roles = [...new Set(actor.grants.map((grant) => grant.role))];
  const found = await mine(
    reading,
    crews.map((crew) => crew.crewId),
  );
  const names = await namesOf(
    reading.db,
    reading.siteId,
    found.flatMap(({ whole }) => shownMake(whole)?.partTight?.leftBy ?? []),
  );
  const rows = found.slice(0, AT_MOST).flatMap((columns): MyJointRow[] => {
    const make = shownMake(columns.whole);
    if (!make) return [];
    const row = toJointRow(columns, reading);
    const target = reachTarget(reading, places, columns.whole);
    const nextSteps = ownSteps(actor, target, columns.whole, make);
    const forward = doable(actor, target, row.waitsFor, nextSteps);
    const can = make.stage === 'part-tight' ? 'part-tight' : forward ? 'now' : 'waiting';
    return [
      {
        ...row,
        can,
        blockedBy: forward ? null : row.waitsFor,
        nextSteps,
        restart: restartOf(make, shutdown, names, now),
      },
    ];
  });
  return {
    now,
    crews: crews.map(({ crewId, code }) => ({ crewId, code })),
    roles,
    rows: rows.sort((a, b) => ORDER.indexOf(a.can) - ORDER.indexOf(b.can)),
    truncated: found.length > AT_MOST,
  };
}
