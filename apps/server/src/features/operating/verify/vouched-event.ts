import { isDeepStrictEqual } from 'node:util';
import type { Evidence, RecordedEvent } from '@seatwell/workflow';

/** Values of a row by column, in the text form of COPY. */
export type Row = Readonly<Record<string, string | null>>;

/** What the canonical bytes of an event say. */
export interface VouchedEvent {
  readonly eventId: string;
  readonly type: string;
  readonly v: number;
  readonly kind: string;
  readonly subjectId: string;
  readonly jointId: string | null;
  readonly makeId: string | null;
  readonly accountId: string;
  readonly personId: string | null;
  readonly performedBy: string[];
  readonly device: string | null;
  readonly deviceTime: string;
  readonly workTime: string;
  readonly recordedAt: string;
  readonly payload: unknown;
  readonly evidence: Evidence;
  readonly signature: unknown;
  readonly reviewCodes: string[];
  readonly amends: string | null;
  readonly commandHash: string;
  readonly rowCount: number;
  readonly rowsRoot: string | null;
}

/** What the canonical bytes of a row of a batch say. */
export interface VouchedRow {
  readonly jointId: string;
  readonly makeId: string | null;
  readonly payload: unknown;
  readonly evidence: Evidence;
}

/** The event as it is folded: what it, or a row of its batch, says about a joint. @param sequence its place in the stream */
export const asRecorded = (event: VouchedEvent, sequence: number, about: VouchedEvent | VouchedRow): RecordedEvent => ({
  eventId: event.eventId,
  type: event.type,
  v: event.v,
  sequence,
  jointId: about.jointId,
  makeId: about.makeId,
  payload: about.payload,
  evidence: about.evidence,
  accountId: event.accountId,
  recordedByPersonId: event.personId,
  performedBy: event.performedBy,
  workTime: event.workTime,
  recordedAt: event.recordedAt,
  signed: event.signature !== null,
  reviewCodes: event.reviewCodes,
});

const json = (text: string | null): unknown => (text === null ? null : JSON.parse(text));
const list = (text: string | null): string[] =>
  !text || text === '{}'
    ? []
    : text
        .slice(1, -1)
        .split(',')
        .map((part) => part.replace(/^"(.*)"$/, '$1'));
const hex = (text: string | null): string | null => text?.slice(2) ?? null;

/** The column keeps milliseconds, the bytes what was sent. */
const sameInstant = (column: string | null, said: string): boolean =>
  Math.abs(Date.parse(`${column?.replace(' ', 'T').replace(/\+00$/, '')}Z`) - Date.parse(said)) <= 1;

/**
 * Columns of an event's row that say something else than the bytes that the record vouches for: screens and folds
 * read the columns.
 */
export function columnsThatDisagree(row: Row, said: VouchedEvent): string[] {
  const same: Record<string, boolean> = {
    event_id: row['event_id'] === said.eventId,
    type: row['type'] === said.type,
    v: Number(row['v']) === said.v,
    kind: row['kind'] === said.kind,
    subject_id: row['subject_id'] === said.subjectId,
    joint_id: row['joint_id'] === said.jointId,
    make_id: row['make_id'] === said.makeId,
    account_id: row['account_id'] === said.accountId,
    person_id: row['person_id'] === said.personId,
    performed_by: isDeepStrictEqual(list(row['performed_by'] ?? null), said.performedBy),
    device: row['device'] === said.device,
    device_time: sameInstant(row['device_time'] ?? null, said.deviceTime),
    work_time: sameInstant(row['work_time'] ?? null, said.workTime),
    recorded_at: sameInstant(row['recorded_at'] ?? null, said.recordedAt),
    payload: isDeepStrictEqual(json(row['payload'] ?? null), said.payload),
    evidence: isDeepStrictEqual(json(row['evidence'] ?? null), said.evidence),
    signature: isDeepStrictEqual(json(row['signature'] ?? null), said.signature),
    review_codes: isDeepStrictEqual(list(row['review_codes'] ?? null), said.reviewCodes),
    amends: row['amends'] === said.amends,
    command_hash: hex(row['command_hash'] ?? null) === said.commandHash,
    row_count: Number(row['row_count']) === said.rowCount,
    rows_root: hex(row['rows_root'] ?? null) === said.rowsRoot,
  };
  return Object.keys(same).filter((column) => !same[column]);
}

/** The same of a row of a batch. */
export function batchColumnsThatDisagree(row: Row, said: VouchedRow): string[] {
  const same: Record<string, boolean> = {
    joint_id: row['joint_id'] === said.jointId,
    make_id: row['make_id'] === said.makeId,
    payload: isDeepStrictEqual(json(row['payload'] ?? null), said.payload),
    evidence: isDeepStrictEqual(json(row['evidence'] ?? null), said.evidence),
  };
  return Object.keys(same).filter((column) => !same[column]);
}
