import type { BatchAnswer, EventType } from '@seatwell/contract';
import { CATALOGUE, eventKind } from '@seatwell/workflow';
import { inTransaction, type Transaction } from '../../platform/database/pool.ts';
import { Problem } from '../../platform/errors/problem.ts';
import { appendEvent } from '../../platform/record/append.ts';
import type { Actor } from '../../platform/sign-in/sessions.ts';
import { type JointRow, type Judged, judgeJoint, refuse } from '../joints/decide-on-makes.ts';
import { FactsLoader } from '../joints/facts.ts';
import { lockJoints } from '../joints/joint-store.ts';
import { type JointChange, projectJoints } from '../joints/project-joints.ts';
import { loadShutdown } from '../shutdowns/load-shutdown.ts';
import type { DecisionInput } from './decision.ts';
import { commandHash, confirmSignature, earlierAnswer, type RecordingParts } from './record-command.ts';
import { applyRollup } from './rollup.ts';
import { signatureOf } from './signature.ts';
import { workTime } from './work-time.ts';

/** A list of joints under one decision, already parsed by its schema. */
export interface Batch {
  readonly eventId: string;
  readonly subjectId: string;
  readonly deviceTime: string;
  readonly clockOffset_ms: number;
  readonly device: string | null;
  readonly performedBy: readonly string[];
  readonly alreadyDone: boolean;
  readonly signature: { readonly secret: string; readonly meaning: string } | null;
  readonly mode: 'all' | 'each';
  readonly rows: readonly { jointId: string; makeId: string; versionSeen: number | null; payload: unknown }[];
}

export type Progress = (done: number) => Promise<void>;

/** Checks id and signature of a batch before its (perhaps long) work. */
export async function prepareBatch(
  parts: RecordingParts,
  actor: Actor,
  shutdownId: string,
  type: EventType,
  batch: Batch,
): Promise<{ hash: Buffer; signed: boolean; earlier: BatchAnswer | null }> {
  if (!CATALOGUE[type].batchable)
    throw new Problem('bad-input', `“${type}” is recorded joint by joint, not as a list.`);
  const hash = commandHash(actor, { shutdownId }, type, batch);
  const earlier = await earlierAnswer<BatchAnswer>(parts.db, actor.siteId, batch.eventId, hash);
  const first = batch.rows[0];
  const signed = earlier
    ? false
    : await confirmSignature(parts.db, actor, type, { payload: first?.payload, signature: batch.signature });
  return { hash, signed, earlier };
}

/**
 * Records a list as one event whose rows hang under a Merkle root. With mode `all` nothing is recorded unless every
 * row passes; with `each` the rows that fail are left out and named in the answer.
 */
export function recordBatch(
  parts: RecordingParts,
  actor: Actor,
  shutdownId: string,
  type: EventType,
  batch: Batch,
  prepared: { readonly hash: Buffer; readonly signed: boolean },
  progress: Progress = async () => {},
): Promise<BatchAnswer> {
  return inTransaction(parts.db, async (tx) => {
    const shutdown = await loadShutdown(tx, actor.siteId, shutdownId);
    const now = parts.clock().toISOString();
    const measured = workTime(batch.deviceTime, batch.clockOffset_ms, now);
    const fact = eventKind(type, batch.rows[0]?.payload) === 'fact';
    const input: DecisionInput = {
      tx,
      type,
      payload: batch.rows[0]?.payload as never,
      eventId: batch.eventId,
      subjectId: batch.subjectId,
      makeId: null,
      actor,
      now,
      workTime: fact ? measured.at : now,
      doubtfulTime: fact && measured.doubtful,
      performedBy: batch.performedBy.length > 0 ? batch.performedBy : [actor.personId],
      versionSeen: null,
      alreadyDone: batch.alreadyDone,
      signed: prepared.signed,
      shutdown,
    };
    const { judged, refused } = await judgeRows(input, batch.rows, progress);
    if (batch.mode === 'all' && refused.length > 0) refuse(refused.flatMap((row) => row.failed));
    if (judged.length === 0)
      return { eventId: batch.eventId, sequence: null, recordedAt: null, recorded: 0, refused, jobId: null };
    return appendBatch(tx, input, batch, prepared, judged, refused);
  });
}

async function judgeRows(
  input: DecisionInput,
  rows: readonly JointRow[],
  progress: Progress,
): Promise<{ judged: { row: JointRow; judged: Judged }[]; refused: BatchAnswer['refused'] }> {
  const { siteId, shutdownId } = input.shutdown as NonNullable<DecisionInput['shutdown']>;
  const facts = new FactsLoader(input.tx, siteId, shutdownId);
  const joints = await lockJoints(
    input.tx,
    siteId,
    shutdownId,
    rows.map((row) => row.jointId),
  );
  const versions = new Map([...joints].map(([jointId, joint]) => [jointId, joint.version]));
  const judged: { row: JointRow; judged: Judged }[] = [];
  const refused: BatchAnswer['refused'] = [];
  for (const [index, row] of rows.entries()) {
    const joint = joints.get(row.jointId);
    if (!joint) continue;
    try {
      // Two makes of one joint in a list: the second is held against the version before the list.
      const seen = row.versionSeen === versions.get(row.jointId) ? joint.version : row.versionSeen;
      const judgement = await judgeJoint({ ...input, payload: row.payload as never }, facts, joint, {
        ...row,
        versionSeen: seen,
      });
      if (judgement.outcome === 'recorded') {
        joints.set(row.jointId, judgement.judged.after);
        judged.push({ row, judged: judgement.judged });
      } else
        refused.push({
          jointId: row.jointId,
          makeId: row.makeId ?? row.jointId,
          joint: joint.tag,
          failed: [...judgement.failed],
        });
    } catch (error) {
      if (!(error instanceof Problem)) throw error;
      refused.push({
        jointId: row.jointId,
        makeId: row.makeId ?? row.jointId,
        joint: joint.tag,
        failed: [problemAsRule(joint.tag, error)],
      });
    }
    if (index % 50 === 49) await progress(index + 1);
  }
  return { judged, refused };
}

/** A stale version, a missing role or a calculation that refuses is answered beside the failed rules of the list. */
const problemAsRule = (joint: string, problem: Problem): BatchAnswer['refused'][number]['failed'][number] => ({
  rule: problem.items[0]?.code ?? problem.code,
  severity: 'stop',
  joint,
  message: problem.message,
  why: '',
  remedy: '',
  detail: problem.message,
});

/** One change per joint, from before the list to after it, however many rows of it are in the list. */
function changesOf(judged: readonly { judged: Judged }[]): JointChange[] {
  const changes = new Map<string, JointChange>();
  for (const {
    judged: { joint, after },
  } of judged) {
    changes.set(joint.jointId, { before: changes.get(joint.jointId)?.before ?? joint, after });
  }
  return [...changes.values()];
}

async function appendBatch(
  tx: Transaction,
  input: DecisionInput,
  batch: Batch,
  prepared: { readonly hash: Buffer; readonly signed: boolean },
  judged: readonly { row: JointRow; judged: Judged }[],
  refused: BatchAnswer['refused'],
): Promise<BatchAnswer> {
  const shutdown = input.shutdown as NonNullable<DecisionInput['shutdown']>;
  const rollup = await projectJoints(tx, shutdown, changesOf(judged), input.now);
  const signature = prepared.signed
    ? await signatureOf(tx, input.actor, input.type, { ...batch, payload: input.payload }, input.now)
    : null;
  const answer = (sequence: number): BatchAnswer => ({
    eventId: batch.eventId,
    sequence,
    recordedAt: input.now,
    recorded: judged.length,
    refused,
    jobId: null,
  });
  const sequence = await appendEvent(tx, {
    siteId: input.actor.siteId,
    streamId: shutdown.shutdownId,
    eventId: batch.eventId,
    type: input.type,
    v: CATALOGUE[input.type].currentVersion,
    kind: eventKind(input.type, input.payload),
    subjectId: batch.subjectId,
    jointId: null,
    makeId: null,
    accountId: input.actor.accountId,
    personId: input.actor.personId,
    performedBy: input.performedBy,
    device: batch.device,
    deviceTime: batch.deviceTime,
    workTime: input.workTime,
    recordedAt: input.now,
    payload: { rows: judged.length },
    evidence: {},
    signature,
    reviewCodes: [...new Set(judged.flatMap(({ judged: each }) => each.reviewCodes))],
    amends: null,
    commandHash: prepared.hash,
    rows: judged.map(({ row, judged: each }) => ({
      jointId: row.jointId,
      makeId: row.makeId,
      payload: row.payload,
      evidence: each.evidence,
    })),
    answer,
  });
  await applyRollup(tx, input.actor.siteId, shutdown.shutdownId, rollup);
  return answer(sequence);
}
