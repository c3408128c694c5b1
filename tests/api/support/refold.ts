import { type Evidence, foldHistory, type JointState, type RecordedEvent } from '@seatwell/workflow';
import type pg from 'pg';
import { leafHash, rootOfLeaves } from '../../../apps/server/src/platform/record/merkle.ts';

/** An event as its canonical bytes say it; the position in the stream is its sequence. */
interface Vouched {
  readonly eventId: string;
  readonly type: string;
  readonly v: number;
  readonly jointId: string | null;
  readonly makeId: string | null;
  readonly accountId: string;
  readonly personId: string | null;
  readonly performedBy: string[];
  readonly workTime: string;
  readonly recordedAt: string;
  readonly payload: unknown;
  readonly evidence: Evidence;
  readonly signature: unknown;
  readonly reviewCodes: string[];
  readonly rowCount: number;
  readonly rowsRoot: string | null;
}
interface VouchedRow {
  readonly jointId: string;
  readonly makeId: string | null;
  readonly payload: unknown;
  readonly evidence: Evidence;
}

type Client = pg.ClientBase;

/** What a stream says when it is read from the stored bytes alone. */
export interface ReadStream {
  readonly events: readonly Vouched[];
  /** the root of the leaves hashed anew from the bytes */
  readonly root: string;
  readonly joints: ReadonlyMap<string, JointState>;
}

const parse = <T>(bytes: Buffer): T => JSON.parse(bytes.toString('utf8')) as T;

const recorded = (event: Vouched, sequence: number, about: VouchedRow | Vouched): RecordedEvent => ({
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

/** Rows of the batches of a stream by event, with the root that they hang under recomputed. */
async function readRows(client: Client, streamId: string): Promise<Map<string, { rows: VouchedRow[]; root: string }>> {
  const { rows } = await client.query<{ event_id: string; canonical: Buffer }>(
    'SELECT event_id, canonical FROM event_row WHERE stream_id = $1 ORDER BY event_id, row',
    [streamId],
  );
  const bytes = new Map<string, Buffer[]>();
  for (const row of rows) bytes.set(row.event_id, [...(bytes.get(row.event_id) ?? []), row.canonical]);
  return new Map(
    [...bytes].map(([eventId, canonical]) => [
      eventId,
      {
        rows: canonical.map((each) => parse<VouchedRow>(each)),
        root: rootOfLeaves(canonical.map((each) => leafHash(each))).toString('hex'),
      },
    ]),
  );
}

/**
 * Reads a stream as a stranger does: from the canonical bytes, and nothing else.
 * @throws Error when the rows of a batch do not hang under the root that its event vouches for
 */
export async function readStream(client: Client, streamId: string): Promise<ReadStream> {
  const { rows } = await client.query<{ canonical: Buffer }>(
    'SELECT canonical FROM event WHERE stream_id = $1 ORDER BY sequence',
    [streamId],
  );
  const batches = await readRows(client, streamId);
  const events = rows.map((row) => parse<Vouched>(row.canonical));
  const histories = new Map<string, RecordedEvent[]>();
  const tell = (jointId: string, event: RecordedEvent) =>
    histories.set(jointId, [...(histories.get(jointId) ?? []), event]);
  for (const [index, event] of events.entries()) {
    const batch = batches.get(event.eventId);
    if ((batch?.root ?? null) !== event.rowsRoot || (batch?.rows.length ?? 0) !== event.rowCount)
      throw new Error(`The rows of event ${event.eventId} are not those that it vouches for.`);
    if (event.jointId) tell(event.jointId, recorded(event, index + 1, event));
    for (const row of batch?.rows ?? []) tell(row.jointId, recorded(event, index + 1, row));
  }
  const joints = new Map<string, JointState>();
  for (const [jointId, history] of histories) {
    const state = foldHistory(history);
    if (state) joints.set(jointId, state);
  }
  return { events, root: rootOfLeaves(rows.map((row) => leafHash(row.canonical))).toString('hex'), joints };
}
