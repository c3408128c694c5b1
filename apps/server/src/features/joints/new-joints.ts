import type { Payload } from '@seatwell/contract';
import { foldJoint, type JointState } from '@seatwell/workflow';
import { Problem } from '../../platform/errors/problem.ts';
import type { DecisionInput, Recording } from '../recording/decision.ts';
import { shutdownOf } from '../recording/shutdown-of.ts';
import { eventToFold } from './event-to-fold.ts';
import { FactsLoader } from './facts.ts';
import { projectJoints } from './project-joints.ts';
import { requireNamed } from './require-named.ts';

interface NewJoint {
  readonly jointId: string;
  readonly payload: Payload<'joint-listed'> | Payload<'joint-found'>;
}

const tagOf = ({ payload }: NewJoint): string => ('tag' in payload ? payload.tag : payload.temporaryNumber);

/** @throws Problem `already-exists` naming the tags that the shutdown has already */
async function refuseTakenTags(input: DecisionInput, joints: readonly NewJoint[]): Promise<void> {
  const { siteId, shutdownId } = shutdownOf(input);
  const { rows } = await input.tx.query<{ tag: string }>(
    `SELECT tag FROM joint WHERE site_id = $1 AND shutdown_id = $2 AND (tag = ANY($3) OR joint_id = ANY($4::uuid[])) ORDER BY tag`,
    [siteId, shutdownId, joints.map(tagOf), joints.map((joint) => joint.jointId)],
  );
  if (rows.length === 0) return;
  throw new Problem(
    'already-exists',
    `This shutdown has ${rows[0]?.tag} already${rows.length > 1 ? `, and ${rows.length - 1} more of the list` : ''}. Change it instead of listing it again.`,
    rows.slice(0, 50).map((row) => ({ path: 'payload.tag', code: 'tag-taken', message: row.tag })),
  );
}

/** The joint that a first event begins. */
export function newJoint(input: DecisionInput, joint: NewJoint): JointState {
  const type = 'tag' in joint.payload ? 'joint-listed' : 'joint-found';
  return foldJoint(null, eventToFold(input, { type, jointId: joint.jointId, makeId: null, payload: joint.payload }));
}

/** Lists or finds joints that the shutdown does not have yet: their places, their state and their counts. */
export async function beginJoints(input: DecisionInput, joints: readonly NewJoint[]): Promise<Recording> {
  const shutdown = shutdownOf(input);
  const facts = new FactsLoader(input.tx, shutdown.siteId, shutdown.shutdownId);
  for (const { jointId, payload } of joints) await requireNamed(facts, input.type, payload, jointId);
  await refuseTakenTags(input, joints);
  await input.tx.query(
    `INSERT INTO joint_place (site_id, place_id, tag)
     SELECT $1, p.place_id, p.tag FROM unnest($2::uuid[], $3::text[]) AS p (place_id, tag)
     ON CONFLICT (site_id, place_id) DO UPDATE SET tag = excluded.tag`,
    [shutdown.siteId, joints.map((joint) => joint.payload.placeId), joints.map(tagOf)],
  );
  const states = joints.map((joint) => newJoint(input, joint));
  const rollup = await projectJoints(
    input.tx,
    shutdown,
    states.map((after) => ({ before: null, after })),
    input.now,
  );
  const only = states.length === 1 ? states[0] : undefined;
  return {
    jointId: only?.jointId ?? null,
    rollup,
    stage: 'planned',
    version: only?.version ?? null,
  };
}
