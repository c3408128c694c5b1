import type { MyJointRow, MyJointsAnswer, Role } from '@seatwell/contract';
import type { JointState } from '@seatwell/workflow';
import type { ReachTarget } from '../../platform/access/allows.ts';
import { namesOf } from '../reading/names.ts';
import { loadPlaces, type Places, placeOf } from '../reading/places.ts';
import type { Reading } from '../reading/reading.ts';
import { restartOf } from '../reading/restart.ts';
import { doable } from './doable.ts';
import { type JointRowColumns, jointRowsSql, toJointRow } from './joint-row.ts';
import { ownSteps } from './make-actions.ts';
import { shownMake } from './project-joints.ts';

const AT_MOST = 500;

/** Roles whose own list is what waits for them, wherever their grant reaches. */
const WAITED_FOR: readonly Role[] = ['inspector', 'engineer', 'operations', 'witness', 'coordinator'];

interface MineColumns extends JointRowColumns {
  readonly whole: JointState;
}

/** Joints of the caller's crews, and what waits for the caller's roles; the part tight ones never fall off the end. */
async function mine(reading: Reading, crewIds: readonly string[], roles: readonly Role[]): Promise<MineColumns[]> {
  const page = `SELECT j.* FROM joint j WHERE j.site_id = $1 AND j.shutdown_id = $2 AND j.voided IS NULL
      AND j.make_id IS NOT NULL AND j.waits_for <> 'nothing'
      AND (j.crew_id = ANY($3::uuid[]) OR j.waits_for_data->>'by' = ANY($4::text[]))
    ORDER BY (j.stage = 'part-tight') DESC, j.planned_on NULLS LAST, j.tag_key, j.joint_id LIMIT ${AT_MOST + 1}`;
  const { rows } = await reading.db.query<MineColumns>({
    name: 'my-joints',
    text: jointRowsSql(
      page,
      `(p.stage = 'part-tight') DESC, p.planned_on NULLS LAST, p.tag_key, p.joint_id`,
      ', p.state AS whole',
    ),
    values: [reading.siteId, reading.shutdownId, crewIds, roles],
  });
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
    roles.filter((role) => WAITED_FOR.includes(role)),
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
