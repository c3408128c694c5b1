import type { EventType } from '@seatwell/contract';
import { uuidv7 } from 'uuidv7';
import { Problem } from '../../platform/errors/problem.ts';
import { type JobWork, startJob } from '../../platform/jobs/queue.ts';
import { loadActor } from '../../platform/sign-in/sessions.ts';
import { type Batch, recordBatch } from './record-batch.ts';
import { earlierAnswer, type RecordingParts } from './record-command.ts';
import type { StartBatchJob } from './routes.ts';

interface BatchJobInput {
  readonly accountId: string;
  readonly shutdownId: string;
  readonly type: EventType;
  readonly batch: Batch;
  readonly hash: string;
  readonly signed: boolean;
}

export const BATCH_JOB = 'record-list';

/** Puts a long list into the queue; its signature has been checked and its secret is not kept. */
export const startBatchJob =
  (parts: RecordingParts): StartBatchJob =>
  async (actor, shutdownId, type, batch, prepared) => {
    const input: BatchJobInput = {
      accountId: actor.accountId,
      shutdownId,
      type,
      batch: { ...batch, signature: batch.signature ? { secret: '', meaning: batch.signature.meaning } : null },
      hash: prepared.hash.toString('hex'),
      signed: prepared.signed,
    };
    return startJob(parts.db, {
      siteId: actor.siteId,
      jobId: uuidv7(),
      shutdownId,
      kind: BATCH_JOB,
      total: batch.rows.length,
      input,
      startedBy: actor.accountId,
    });
  };

/** Records the list with a result per joint; a repeat of the job finds the first answer. */
export const batchJob =
  (parts: RecordingParts): JobWork =>
  async ({ siteId, input, progress }) => {
    const { accountId, shutdownId, type, batch, hash, signed } = input as BatchJobInput;
    const actor = await loadActor(parts.db, siteId, accountId);
    if (!actor) throw new Problem('not-signed-in', 'The account that started this was closed.');
    const bound = Buffer.from(hash, 'hex');
    const earlier = await earlierAnswer(parts.db, siteId, batch.eventId, bound);
    return earlier ?? recordBatch(parts, actor, shutdownId, type, batch, { hash: bound, signed }, progress);
  };
