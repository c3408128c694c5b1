import type {
  BatchAnswer,
  CommandAnswer,
  ShutdownEventType,
  ShutdownPayload,
  SiteEventType,
  SitePayload,
} from '@seatwell/contract';
import { uuidv7 } from 'uuidv7';
import { request } from './api-client.ts';
import { ApiProblem } from './api-problem.ts';
import { clockOffset_ms } from './clock-offset.ts';

/** What binds a signature: the secret, typed again, and what the person says by signing. */
export interface SignatureInput {
  readonly secret: string;
  readonly meaning: string;
}

interface EnvelopeInput {
  /** the joint, pack, permit, person … that this is about */
  readonly subjectId: string;
  /** kept by the caller where the same thing may be sent again later */
  readonly eventId?: string;
  /** version of the joint or pack that the decision's maker saw */
  readonly versionSeen?: number | null;
  readonly signature?: SignatureInput | null;
  /** persons who did the work, where it is not (only) the one who records it */
  readonly performedBy?: readonly string[];
  /** keep the fact although rules fail, for somebody entitled to deal with */
  readonly alreadyDone?: boolean;
  /** when it was done, device time; now when left out */
  readonly at?: Date;
}

export interface CommandInput<Payload> extends EnvelopeInput {
  readonly makeId?: string | null;
  /** hash of the photo of the paper form that it is entered from; facts only */
  readonly paperForm?: string | null;
  readonly payload: Payload;
}

export interface ListInput<Payload> extends EnvelopeInput {
  /** `all` = nothing is recorded unless every row passes; `each` = rows that fail are left out and named */
  readonly mode: 'all' | 'each';
  readonly rows: readonly {
    readonly jointId: string;
    readonly makeId: string;
    readonly versionSeen?: number | null;
    readonly payload: Payload;
  }[];
}

/** A new id for an event or a thing: UUIDv7, made here so that a repeat is recognised. */
export const newId = (): string => uuidv7();

/** Records one event of a shutdown. */
export function sendCommand<T extends ShutdownEventType>(
  shutdownId: string,
  type: T,
  input: CommandInput<ShutdownPayload<T>>,
): Promise<CommandAnswer> {
  return post(`/shutdowns/${shutdownId}/commands/${type}`, {
    ...envelope(input),
    makeId: input.makeId ?? null,
    paperForm: input.paperForm ?? null,
    payload: input.payload,
  });
}

/** Records one event of the site. */
export function sendSiteCommand<T extends SiteEventType>(
  type: T,
  input: CommandInput<SitePayload<T>>,
): Promise<CommandAnswer> {
  return post(`/site/commands/${type}`, {
    ...envelope(input),
    makeId: input.makeId ?? null,
    payload: input.payload,
  });
}

/** Records one decision over a list of joints, under one signature where the event is signed. */
export function sendList<T extends ShutdownEventType>(
  shutdownId: string,
  type: T,
  input: ListInput<ShutdownPayload<T>>,
): Promise<BatchAnswer> {
  return post(`/shutdowns/${shutdownId}/lists/${type}`, {
    ...envelope(input),
    mode: input.mode,
    rows: input.rows.map((row) => ({ ...row, versionSeen: row.versionSeen ?? null })),
  });
}

function envelope(input: EnvelopeInput) {
  return {
    eventId: input.eventId ?? newId(),
    v: 1,
    subjectId: input.subjectId,
    deviceTime: (input.at ?? new Date()).toISOString(),
    clockOffset_ms: clockOffset_ms(),
    device: navigator.userAgent.slice(0, 120),
    performedBy: input.performedBy ?? [],
    versionSeen: input.versionSeen ?? null,
    alreadyDone: input.alreadyDone ?? false,
    signature: input.signature ?? null,
  };
}

const waits_ms = [400, 1200, 3000];

// The id makes a repeat harmless: where no answer came, the server says what became of the first try.
async function post<Answer>(path: string, body: unknown): Promise<Answer> {
  for (const wait_ms of waits_ms) {
    try {
      return await request<Answer>(path, { method: 'POST', body });
    } catch (error) {
      if (!(error instanceof ApiProblem) || !(error.code === 'no-answer' || error.status === 503)) throw error;
      await new Promise((resolve) => setTimeout(resolve, wait_ms));
    }
  }
  return request<Answer>(path, { method: 'POST', body });
}
