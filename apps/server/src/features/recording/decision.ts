import type { EventType, FailedRuleAnswer, Payload } from '@seatwell/contract';
import type { Transaction } from '../../platform/database/pool.ts';
import type { RowToAppend } from '../../platform/record/stage-rows.ts';
import type { Actor } from '../../platform/sign-in/sessions.ts';
import type { ShutdownRow } from '../shutdowns/load-shutdown.ts';

/** What a decision function is given: the command, who gives it, and the transaction that it all happens in. */
export interface DecisionInput<T extends EventType = EventType> {
  readonly tx: Transaction;
  readonly type: T;
  readonly payload: Payload<T>;
  readonly eventId: string;
  readonly subjectId: string;
  readonly makeId: string | null;
  readonly actor: Actor;
  /** ISO instant of arrival, from the clock of the command path */
  readonly now: string;
  /** when the work was done; equals `now` for decisions */
  readonly workTime: string;
  /** the device's clock cannot be trusted to five minutes */
  readonly doubtfulTime: boolean;
  readonly performedBy: readonly string[];
  readonly versionSeen: number | null;
  readonly alreadyDone: boolean;
  readonly signed: boolean;
  /** null on the site stream */
  readonly shutdown: ShutdownRow | null;
}

/** Joints that enter or leave a stage, by the things that progress is counted for. */
export interface RollupDelta {
  readonly dimension: 'shutdown' | 'area' | 'system' | 'pack';
  readonly key: string;
  readonly stage: string;
  readonly count: number;
}

/** What a decision function answers: what to append, and how the projections change. */
export interface Recording {
  readonly jointId?: string | null;
  readonly makeId?: string | null;
  readonly evidence?: object;
  readonly reviewCodes?: readonly string[];
  readonly failed?: readonly FailedRuleAnswer[];
  /** what the record keeps in place of the payload: names as commitments */
  readonly storedPayload?: unknown;
  readonly amends?: string | null;
  readonly stage?: string | null;
  readonly version?: number | null;
  readonly rows?: readonly RowToAppend[];
  readonly rollup?: readonly RollupDelta[];
}

/** Locks, judges and projects one command; the record is appended after it, in the same transaction. */
export type Decide<T extends EventType> = (input: DecisionInput<T>) => Promise<Recording>;
export type Decisions<T extends EventType> = { readonly [K in T]: Decide<K> };
