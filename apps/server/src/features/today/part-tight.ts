import type { PartTightRow } from '@seatwell/contract';
import { type JointState, shiftAt } from '@seatwell/workflow';
import { shownMake } from '../joints/shown-make.ts';
import { namesOf } from '../reading/names.ts';
import { crewRefOf, type Places, placeOf } from '../reading/places.ts';
import type { Reading } from '../reading/reading.ts';
import { restartOf } from '../reading/restart.ts';

/** Every joint that is part tight now, the longest left first: who left it, where, and where to restart. */
export async function partTightRows(reading: Reading, places: Places): Promise<PartTightRow[]> {
  const { db, siteId, shutdownId, shutdown, now } = reading;
  const { rows } = await db.query<{ state: JointState }>({
    name: 'part-tight-rows',
    text: `SELECT state FROM joint WHERE site_id = $1 AND shutdown_id = $2 AND stage = 'part-tight' AND voided IS NULL
      ORDER BY stage_since NULLS LAST, tag_key, joint_id LIMIT 500`,
    values: [siteId, shutdownId],
  });
  const names = await namesOf(
    db,
    siteId,
    rows.flatMap(({ state }) => shownMake(state)?.partTight?.leftBy ?? []),
  );
  const shiftStart = Date.parse(shiftAt(now, shutdown.shifts, shutdown.timeZone).start);
  return rows.flatMap(({ state }): PartTightRow[] => {
    const make = shownMake(state);
    if (!make) return [];
    const left = make.partTight;
    const { flange } = state.specification;
    return [
      {
        jointId: state.jointId,
        tag: state.tag,
        makeId: make.makeId,
        kind: state.kind,
        size: flange.size,
        rating: flange.rating,
        boltCount: state.bolting?.count ?? null,
        area: placeOf(places.areas, state.whereabouts.areaId),
        crew: crewRefOf(places, make.crewId),
        leftAt: left?.leftAt ?? null,
        pass: left?.pass ?? null,
        lastBolt: left?.lastBolt ?? null,
        why: left?.why ?? null,
        leftBy: names.all(left?.leftBy ?? []),
        restart: restartOf(make, shutdown, names, now),
        interruptedLastShift: left !== null && Date.parse(left.leftAt) < shiftStart,
      },
    ];
  });
}
