import type { ImportConfirmation } from '@seatwell/contract';
import { CATALOGUE, type RecordedEvent } from '@seatwell/workflow';
import type { Transaction } from '../../platform/database/pool.ts';
import type { RowToAppend, stageRows } from '../../platform/record/stage-rows.ts';
import type { Actor } from '../../platform/sign-in/sessions.ts';
import type { ShutdownRow } from '../shutdowns/load-shutdown.ts';
import type { Draft, StoredPreview } from './drafts.ts';

/** What the parts of one import are done with: a transaction, who confirmed it, and what was confirmed. */
export interface Import {
  readonly tx: Transaction;
  readonly actor: Actor;
  readonly shutdown: ShutdownRow;
  readonly draft: Draft;
  readonly preview: StoredPreview;
  readonly confirmation: ImportConfirmation;
  readonly hash: Buffer;
  readonly now: string;
  readonly progress: (done: number, total?: number) => Promise<void>;
}

export const BATCHES = ['joint-listed', 'joint-specified', 'make-assigned'] as const;
export type BatchType = (typeof BATCHES)[number];
export type Stages = Readonly<
  Record<BatchType, { readonly eventId: string; readonly rows: ReturnType<typeof stageRows> }>
>;

/** A row's event as the fold takes it; nothing in a state depends on its sequence, which is not known yet. */
export function eventOf(
  { actor, now }: Import,
  type: BatchType,
  eventId: string,
  jointId: string,
  makeId: string | null,
  payload: unknown,
): RecordedEvent {
  return {
    eventId,
    type,
    v: CATALOGUE[type].currentVersion,
    sequence: Number.MAX_SAFE_INTEGER,
    jointId,
    makeId,
    payload,
    evidence: {},
    accountId: actor.accountId,
    recordedByPersonId: actor.personId,
    performedBy: [actor.personId],
    workTime: now,
    recordedAt: now,
    signed: false,
    reviewCodes: [],
  };
}

export const rowOf = (jointId: string, makeId: string | null, payload: unknown): RowToAppend => ({
  jointId,
  makeId,
  payload,
  evidence: {},
});

export type Counter = (rows: number) => Promise<void>;

/** Tells the job after each thousand rows. */
export function counter({ progress }: Import): Counter {
  let done = 0;
  let told = 0;
  return async (rows) => {
    done += rows;
    if (done - told < 1000) return;
    told = done;
    await progress(done);
  };
}
