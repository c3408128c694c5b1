import type { PackPage, Payload } from '@seatwell/contract';
import { type JointState, waitsFor } from '@seatwell/workflow';
import type { Reading } from '../reading/reading.ts';

type Member = PackPage['members'][number];

/** The makes of a pack by tag, each with the last result that a reading gave it. */
export async function packMembers(
  { db, siteId, shutdownId, shutdown, now }: Reading,
  packId: string,
  readings: readonly Payload<'test-reading'>[],
): Promise<Member[]> {
  const { rows } = await db.query<{
    makeId: string;
    role: Member['role'];
    flags: string[];
    state: JointState;
  }>({
    name: 'pack-members',
    text: `SELECT mp.make_id AS "makeId", mp.role, j.flags, j.state FROM make_pack mp
      JOIN joint j ON j.site_id = mp.site_id AND j.shutdown_id = mp.shutdown_id AND j.joint_id = mp.joint_id AND j.voided IS NULL
      WHERE mp.site_id = $1 AND mp.shutdown_id = $2 AND mp.pack_id = $3 ORDER BY j.tag_key, mp.make_id`,
    values: [siteId, shutdownId, packId],
  });
  const results = new Map(readings.flatMap((reading) => reading.results.map((each) => [each.makeId, each.result])));
  return rows.flatMap(({ makeId, role, flags, state }) => {
    const make = state.makes.find((each) => each.makeId === makeId);
    if (!make) return [];
    return [
      {
        jointId: state.jointId,
        tag: state.tag,
        makeId,
        makeNumber: make.number,
        purpose: make.purpose,
        role,
        stage: make.stage,
        flags: [...flags, ...(make.stage === 'part-tight' ? ['part-tight'] : [])],
        waitsFor: waitsFor(state, make, shutdown.settings, now),
        version: state.version,
        size: state.specification.flange.size,
        rating: state.specification.flange.rating,
        result: results.get(makeId) ?? null,
        cancelled: make.cancelled,
      },
    ];
  });
}
