import { foldHistory, isWorkedOn, makeToWorkOn, mergedWork } from '@seatwell/workflow';
import { requireAllowed } from '../../platform/access/allows.ts';
import type { Transaction } from '../../platform/database/pool.ts';
import { recountPunchItems } from '../punch-items/decisions.ts';
import type { Decide } from '../recording/decision.ts';
import { shutdownOf } from '../recording/shutdown-of.ts';
import { judgeJoint, reachOf, refuse } from './decide-on-makes.ts';
import { eventToFold } from './event-to-fold.ts';
import { FactsLoader } from './facts.ts';
import { jointHistory, lockJoints } from './joint-store.ts';
import { projectJoints } from './project-joints.ts';

/**
 * A found joint turns out to be one of the register: it leaves the register, and the other goes on with its work. One
 * event for both: the joint of the register folds the found joint's events from the evidence of its row.
 */
export const jointMerged: Decide<'joint-merged'> = async (input) => {
  const shutdown = shutdownOf(input);
  const { siteId, shutdownId } = shutdown;
  const { intoJointId } = input.payload;
  const facts = new FactsLoader(input.tx, siteId, shutdownId);
  const joints = await lockJoints(input.tx, siteId, shutdownId, [input.subjectId, intoJointId]);
  const [found, into] = [joints.get(input.subjectId), joints.get(intoJointId)];
  if (!found || !into) throw new Error('Locked joints are not at hand.');
  const make = makeToWorkOn(into);
  requireAllowed(input.actor, 'void-joint', await reachOf(facts, shutdownId, into, make?.makeId ?? null));

  const row = { jointId: found.jointId, makeId: null, versionSeen: input.versionSeen, payload: input.payload };
  const judgement = await judgeJoint(input, facts, found, row, { mergeInto: { joint: into, make } });
  if (judgement.outcome === 'refused') refuse(judgement.failed);
  const { judged } = judgement;

  const worked = found.makes.find(isWorkedOn)?.makeId ?? null;
  const history = await jointHistory(input.tx, siteId, shutdownId, found.jointId);
  const evidence = { merged: mergedWork(found, history, worked, make?.makeId ?? null) };
  const before = await jointHistory(input.tx, siteId, shutdownId, into.jointId);
  const about = { jointId: into.jointId, makeId: null, payload: input.payload, evidence };
  const asTheRegisterReadsIt = eventToFold(input, about);
  const after = foldHistory([...before, asTheRegisterReadsIt]);
  if (!after) throw new Error('A joint without events cannot be folded.');

  const rollup = await projectJoints(
    input.tx,
    shutdown,
    [
      { before: found, after: judged.after },
      { before: into, after },
    ],
    input.now,
  );
  await moveWhatNames(input.tx, shutdown, found.jointId, into.jointId);
  return {
    jointId: found.jointId,
    evidence: judged.evidence,
    failed: judged.failed,
    rows: [about],
    rollup,
    version: judged.after.version,
  };
};

/** Open items, blinds, permits and items follow the work: what names a void joint is counted nowhere. */
async function moveWhatNames(
  tx: Transaction,
  where: { readonly siteId: string; readonly shutdownId: string },
  from: string,
  to: string,
): Promise<void> {
  const values = [where.siteId, where.shutdownId, from, to];
  const here = 'WHERE site_id = $1 AND shutdown_id = $2 AND';
  await tx.query(`UPDATE punch_item SET joint_id = $4 ${here} joint_id = $3`, values);
  await tx.query(`UPDATE blind SET joint_id = $4 ${here} joint_id = $3`, values);
  await tx.query(
    `UPDATE permit SET joint_ids = array_append(array_remove(joint_ids, $4), $4) ${here} $3 = ANY(joint_ids)`,
    values,
  );
  await tx.query(
    `UPDATE item SET joint_ids = array_append(array_remove(array_remove(joint_ids, $3), $4), $4) ${here} $3 = ANY(joint_ids)`,
    values,
  );
  for (const jointId of [from, to]) await recountPunchItems(tx, where, jointId);
}
