import type { JointState } from '@seatwell/workflow';
import { copyInto, copyLines } from '../../platform/database/copy-rows.ts';
import type { Transaction } from '../../platform/database/pool.ts';
import type { RollupDelta } from '../recording/decision.ts';
import { counted } from './counted.ts';
import { JOINT_COLUMNS, jointRow, MAKE_COLUMNS, makeRow, type Place } from './projected-rows.ts';

const PACK_COLUMNS = ['site_id', 'shutdown_id', 'pack_id', 'make_id', 'joint_id', 'role'];

/** Rows of new joints as they are sent to the database, and what they add to the counts by stage. */
export interface NewJointRows {
  readonly joints: string;
  readonly makes: string;
  readonly packs: string;
  readonly rollup: readonly RollupDelta[];
}

/** The register's rows of joints that were listed just now. */
export function newJointRows(place: Place, joints: readonly JointState[], now: string): NewJointRows {
  const makes = joints.flatMap((joint) => joint.makes.map((make) => ({ joint, make })));
  const packs = makes.flatMap(({ joint, make }) =>
    make.packs.map(({ packId, role }) => ({
      site_id: place.siteId,
      shutdown_id: place.shutdownId,
      pack_id: packId,
      make_id: make.makeId,
      joint_id: joint.jointId,
      role,
    })),
  );
  return {
    joints: copyLines(
      JOINT_COLUMNS,
      joints.map((joint) => jointRow(place, joint, now)),
    ),
    makes: copyLines(
      MAKE_COLUMNS,
      makes.map(({ joint, make }) => makeRow(place, joint, make)),
    ),
    packs: copyLines(PACK_COLUMNS, packs),
    rollup: joints.flatMap((joint) => counted(place, joint)),
  };
}

/**
 * Inserts joints whose ids the server made: there is nothing to update, so that they need not go the way of
 * `projectJoints`.
 * @throws the database's error for a tag or an id that is there already: then nothing of the transaction is kept
 */
export async function insertJoints(tx: Transaction, { joints, makes, packs }: NewJointRows): Promise<void> {
  await copyInto(tx, 'joint', JOINT_COLUMNS, joints);
  await copyInto(tx, 'make', MAKE_COLUMNS, makes);
  await copyInto(tx, 'make_pack', PACK_COLUMNS, packs);
}
