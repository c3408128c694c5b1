import type { JointState } from '@seatwell/workflow';
import type { Transaction } from '../../platform/database/pool.ts';
import { Problem } from '../../platform/errors/problem.ts';
import type { RollupDelta } from '../recording/decision.ts';
import { counted } from './counted.ts';
import { JOINT_COLUMNS, jointRow, MAKE_COLUMNS, makeRow, type Place } from './projected-rows.ts';

export interface JointChange {
  readonly before: JointState | null;
  readonly after: JointState;
}

const upsert = (table: string, key: string, columns: readonly string[]): string =>
  `INSERT INTO ${table} (${columns.join(', ')})
   SELECT ${columns.map((c) => `r.${c}`).join(', ')} FROM jsonb_populate_recordset(NULL::${table}, $1::jsonb) r
   ON CONFLICT (${key}) DO UPDATE SET ${columns
     .filter((c) => !key.split(', ').includes(c))
     .map((c) => `${c} = excluded.${c}`)
     .join(', ')}`;

const UPSERT_JOINT = upsert('joint', 'site_id, shutdown_id, joint_id', JOINT_COLUMNS);
// The id of a make is made by a client: one that another joint has is never taken over.
const UPSERT_MAKE = `${upsert('make', 'site_id, shutdown_id, make_id', MAKE_COLUMNS)}
   WHERE make.joint_id = excluded.joint_id`;
const AT_ONCE = 1000;

/**
 * Writes the register's rows of joints and makes after their fold, and answers how the counts by stage move.
 * Joints that are known to be new, and many, are better inserted: see `insert-joints.ts`.
 */
export async function projectJoints(
  tx: Transaction,
  place: Place,
  changes: readonly JointChange[],
  now: string,
): Promise<RollupDelta[]> {
  for (let from = 0; from < changes.length; from += AT_ONCE) {
    const part = changes.slice(from, from + AT_ONCE).map((change) => change.after);
    await tx.query({
      name: 'project-joints',
      text: UPSERT_JOINT,
      values: [JSON.stringify(part.map((joint) => jointRow(place, joint, now)))],
    });
    const makes = part.flatMap((joint) => joint.makes.map((make) => makeRow(place, joint, make)));
    const { rowCount } = await tx.query({
      name: 'project-makes',
      text: UPSERT_MAKE,
      values: [JSON.stringify(makes)],
    });
    if (rowCount !== makes.length)
      throw new Problem('already-exists', 'Another joint has a make of this id. Make a new id for each new make.');
  }
  await projectPackMembership(tx, place, changes);
  return changes.flatMap(({ before, after }) => [
    ...(before ? counted(place, before).map((delta) => ({ ...delta, count: -1 })) : []),
    ...counted(place, after),
  ]);
}

async function projectPackMembership(tx: Transaction, place: Place, changes: readonly JointChange[]): Promise<void> {
  const packsOf = (joint: JointState | null) =>
    joint?.makes.flatMap((make) =>
      make.packs.map((pack) => ({ ...pack, makeId: make.makeId, jointId: joint.jointId })),
    ) ?? [];
  const moved = changes.filter(
    ({ before, after }) => JSON.stringify(packsOf(before)) !== JSON.stringify(packsOf(after)),
  );
  if (moved.length === 0) return;
  const rows = moved.flatMap(({ after }) => packsOf(after));
  await tx.query('DELETE FROM make_pack WHERE site_id = $1 AND shutdown_id = $2 AND joint_id = ANY($3::uuid[])', [
    place.siteId,
    place.shutdownId,
    moved.map(({ after }) => after.jointId),
  ]);
  await tx.query(
    `INSERT INTO make_pack (site_id, shutdown_id, pack_id, make_id, joint_id, role)
     SELECT $1, $2, p.* FROM unnest($3::uuid[], $4::uuid[], $5::uuid[], $6::text[]) AS p (pack_id, make_id, joint_id, role)`,
    [
      place.siteId,
      place.shutdownId,
      rows.map((row) => row.packId),
      rows.map((row) => row.makeId),
      rows.map((row) => row.jointId),
      rows.map((row) => row.role),
    ],
  );
}
