import { foldHistory, type JointState, type RecordedEvent } from '@seatwell/workflow';
import type pg from 'pg';
import {
  asRecorded,
  type VouchedEvent,
  type VouchedRow,
} from '../../../apps/server/src/features/operating/verify/vouched-event.ts';
import { leafHash, rootOfLeaves } from '../../../apps/server/src/platform/record/merkle.ts';

type Client = pg.ClientBase;

/** What a stream says when it is read from the stored bytes alone. */
export interface ReadStream {
  readonly events: readonly VouchedEvent[];
  /** the root of the leaves hashed anew from the bytes */
  readonly root: string;
  readonly joints: ReadonlyMap<string, JointState>;
}

const parse = <T>(bytes: Buffer): T => JSON.parse(bytes.toString('utf8')) as T;

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
  const events = rows.map((row) => parse<VouchedEvent>(row.canonical));
  const histories = new Map<string, RecordedEvent[]>();
  const tell = (jointId: string, event: RecordedEvent) =>
    histories.set(jointId, [...(histories.get(jointId) ?? []), event]);
  for (const [index, event] of events.entries()) {
    const batch = batches.get(event.eventId);
    if ((batch?.root ?? null) !== event.rowsRoot || (batch?.rows.length ?? 0) !== event.rowCount)
      throw new Error(`The rows of event ${event.eventId} are not those that it vouches for.`);
    if (event.jointId) tell(event.jointId, asRecorded(event, index + 1, event));
    for (const row of batch?.rows ?? []) tell(row.jointId, asRecorded(event, index + 1, row));
  }
  const joints = new Map<string, JointState>();
  for (const [jointId, history] of histories) {
    const state = foldHistory(history);
    if (state) joints.set(jointId, state);
  }
  return { events, root: rootOfLeaves(rows.map((row) => leafHash(row.canonical))).toString('hex'), joints };
}
