import type { JointState } from '@seatwell/workflow';
import { foldJoint } from '@seatwell/workflow';
import { Problem } from '../../platform/errors/problem.ts';
import type { RowToAppend } from '../../platform/record/stage-rows.ts';
import { lockJoints } from '../joints/joint-store.ts';
import { type JointChange, projectJoints } from '../joints/project-joints.ts';
import type { RollupDelta } from '../recording/decision.ts';
import { type Counter, eventOf, type Import, rowOf, type Stages } from './import-run.ts';
import { planned } from './planned-rows.ts';

/** Specifies and assigns the joints that the sheet has otherwise than the register. */
export async function changeJoints(run: Import, stages: Stages, rollup: RollupDelta[], done: Counter): Promise<void> {
  const { tx, shutdown, actor } = run;
  for await (const rows of planned(run, 'changed')) {
    const joints = await lockJoints(
      tx,
      actor.siteId,
      shutdown.shutdownId,
      rows.map((row) => row.joint_id),
    );
    const changes: JointChange[] = [];
    const specified: RowToAppend[] = [];
    const assigned: RowToAppend[] = [];
    for (const { joint_id: jointId, version, plan } of rows) {
      const before = joints.get(jointId) as JointState;
      // Seen under the lock: what was recorded after the check at the start is not overwritten either.
      if (before.version !== version) {
        throw new Problem(
          'stale-decision',
          `${before.tag} changed while the import ran. Nothing was recorded. Look at the preview again.`,
          [{ path: before.tag, code: 'changed-since', message: before.tag, joint: before.tag }],
        );
      }
      let after = before;
      if (plan.specified) {
        const { eventId } = stages['joint-specified'];
        after = foldJoint(after, eventOf(run, 'joint-specified', eventId, jointId, null, plan.specified));
        specified.push(rowOf(jointId, null, plan.specified));
      }
      if (plan.assigned && plan.makeId) {
        const { eventId } = stages['make-assigned'];
        after = foldJoint(after, eventOf(run, 'make-assigned', eventId, jointId, plan.makeId, plan.assigned));
        assigned.push(rowOf(jointId, plan.makeId, plan.assigned));
      }
      changes.push({ before, after });
    }
    rollup.push(...(await projectJoints(tx, shutdown, changes, run.now)));
    await stages['joint-specified'].rows.add(specified);
    await stages['make-assigned'].rows.add(assigned);
    await done(rows.length);
  }
}
