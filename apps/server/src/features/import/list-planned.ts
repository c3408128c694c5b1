import type { Payload } from '@seatwell/contract';
import { foldJoint } from '@seatwell/workflow';
import type { Transaction } from '../../platform/database/pool.ts';
import { insertJoints, type NewJointRows, newJointRows } from '../joints/insert-joints.ts';
import type { RollupDelta } from '../recording/decision.ts';
import { type Counter, eventOf, type Import, rowOf, type Stages } from './import-run.ts';
import { type PlanRow, planned } from './planned-rows.ts';
import { inSlices } from './slices.ts';

interface Listed {
  readonly jointId: string;
  readonly payload: Payload<'joint-listed'>;
}

/** Rows that are folded before other requests get their turn. */
const FOLDED_AT_ONCE = 25;

/**
 * Lists the joints that the register does not have yet. While the database takes one part, the next is folded: each
 * of the two would otherwise wait for the other half of the time.
 */
export async function listJoints(run: Import, stages: Stages, rollup: RollupDelta[], done: Counter): Promise<void> {
  let write = async () => {};
  for await (const rows of planned(run, 'new')) {
    const [, part] = await Promise.all([write(), prepared(run, stages, rows)]);
    rollup.push(...part.rollup);
    write = async () => {
      await part.write(run.tx);
      await done(rows.length);
    };
  }
  await write();
}

async function prepared(run: Import, stages: Stages, rows: readonly PlanRow[]) {
  const { eventId, rows: stage } = stages['joint-listed'];
  const all = rows.map((row): Listed => ({ jointId: row.joint_id, payload: row.plan.listed as Listed['payload'] }));
  const joints: NewJointRows[] = [];
  const events: ReturnType<typeof stage.prepare>[] = [];
  for await (const listed of inSlices(all, FOLDED_AT_ONCE)) {
    const states = listed.map(({ jointId, payload }) =>
      foldJoint(null, eventOf(run, 'joint-listed', eventId, jointId, null, payload)),
    );
    joints.push(newJointRows(run.shutdown, states, run.now));
    events.push(stage.prepare(listed.map(({ jointId, payload }) => rowOf(jointId, null, payload))));
  }
  const joined = (of: 'joints' | 'makes' | 'packs') => joints.map((part) => part[of]).join('');
  const together: NewJointRows = {
    joints: joined('joints'),
    makes: joined('makes'),
    packs: joined('packs'),
    rollup: joints.flatMap((part) => part.rollup),
  };
  return {
    rollup: together.rollup,
    write: async (tx: Transaction) => {
      await writePlaces(tx, run.actor.siteId, all);
      await insertJoints(tx, together);
      await stage.copy(events.join(''));
    },
  };
}

async function writePlaces(tx: Transaction, siteId: string, listed: readonly Listed[]): Promise<void> {
  await tx.query({
    name: 'import-joint-places',
    text: `INSERT INTO joint_place (site_id, place_id, tag)
       SELECT $1, p.place_id, p.tag FROM unnest($2::uuid[], $3::text[]) AS p (place_id, tag)
       ON CONFLICT (site_id, place_id) DO UPDATE SET tag = excluded.tag`,
    values: [siteId, listed.map(({ payload }) => payload.placeId), listed.map(({ payload }) => payload.tag)],
  });
}
