import type { Transaction } from '../database/pool.ts';
import { canonicalBytes } from './canonical.ts';
import { appendLeaf, frontierRoot, leafHash } from './merkle.ts';
import { type RowToAppend, type StagedRows, stageRows } from './stage-rows.ts';

/** What a signature binds, as it stands in the record. */
export interface StoredSignature {
  readonly personId: string;
  /** the printed name, as a salted commitment: the name itself can be erased without breaking the record */
  readonly nameCommitment: string;
  readonly role: string;
  readonly meaning: string;
  readonly signedAt: string;
  /** SHA-256 of what was shown, hex */
  readonly contentHash: string;
}

export interface EventToAppend {
  readonly siteId: string;
  readonly streamId: string;
  readonly eventId: string;
  readonly type: string;
  readonly v: number;
  readonly kind: 'fact' | 'decision';
  readonly subjectId: string;
  readonly jointId: string | null;
  readonly makeId: string | null;
  readonly accountId: string;
  readonly personId: string | null;
  readonly performedBy: readonly string[];
  readonly device: string | null;
  readonly deviceTime: string;
  readonly workTime: string;
  readonly recordedAt: string;
  readonly payload: unknown;
  readonly evidence: unknown;
  readonly signature: StoredSignature | null;
  readonly reviewCodes: readonly string[];
  readonly amends: string | null;
  readonly commandHash: Buffer;
  readonly rows: readonly RowToAppend[];
  readonly answer: (sequence: number) => unknown;
}

/** Everything of an event that the record vouches for. */
function vouchedFor(event: Omit<EventToAppend, 'rows'>, staged: StagedRows): Record<string, unknown> {
  const { answer: _answer, commandHash, ...rest } = event;
  return {
    ...rest,
    commandHash: commandHash.toString('hex'),
    rowCount: staged.count,
    rowsRoot: staged.root?.toString('hex') ?? null,
  };
}

/**
 * Appends an event (and its rows) to its stream. The stream's head row is locked here, after everything else of the
 * transaction: sequence and Merkle frontier come from it, and others wait for it as short a time as can be.
 * @returns the sequence number of the event
 */
export async function appendEvent(tx: Transaction, { rows, ...event }: EventToAppend): Promise<number> {
  const stage = stageRows(tx, event);
  await stage.add(rows);
  return appendStaged(tx, event, stage.staged());
}

/** Appends an event whose rows, if it has any, were staged before: from here on the stream's head is locked. */
export async function appendStaged(
  tx: Transaction,
  event: Omit<EventToAppend, 'rows'>,
  staged: StagedRows,
): Promise<number> {
  const canonical = canonicalBytes(vouchedFor(event, staged));
  const leaf = leafHash(canonical);

  const head = await tx.query<{ sequence: number; frontier: Buffer[] }>({
    name: 'lock-stream-head',
    text: 'SELECT sequence, frontier FROM stream_head WHERE site_id = $1 AND stream_id = $2 FOR UPDATE',
    values: [event.siteId, event.streamId],
  });
  const before = head.rows[0];
  if (!before) throw new Error(`Stream ${event.streamId} has no head row.`);
  const sequence = before.sequence + 1;
  const frontier = appendLeaf(before.frontier, before.sequence, leaf);

  await tx.query({
    name: 'append-event',
    text: `WITH head AS (
        UPDATE stream_head SET sequence = $3, frontier = $4, root = $5, changed_at = $16
        WHERE site_id = $1 AND stream_id = $2)
      INSERT INTO event (site_id, stream_id, sequence, event_id, type, v, kind, subject_id, joint_id, make_id,
        account_id, person_id, performed_by, device, device_time, work_time, recorded_at, payload, evidence, signature,
        review_codes, amends, row_count, rows_root, canonical, leaf, command_hash, response)
      VALUES ($1, $2, $3, $6, $7, $8, $9, $10, $11, $12, $13, $14, $15, $17, $18, $19, $16, $20, $21, $22, $23, $24,
        $25, $26, $27, $28, $29, $30)`,
    values: [
      event.siteId,
      event.streamId,
      sequence,
      frontier,
      frontierRoot(frontier),
      event.eventId,
      event.type,
      event.v,
      event.kind,
      event.subjectId,
      event.jointId,
      event.makeId,
      event.accountId,
      event.personId,
      event.performedBy,
      event.recordedAt,
      event.device,
      event.deviceTime,
      event.workTime,
      JSON.stringify(event.payload),
      JSON.stringify(event.evidence),
      event.signature ? JSON.stringify(event.signature) : null,
      event.reviewCodes,
      event.amends,
      staged.count,
      staged.root,
      canonical,
      leaf,
      event.commandHash,
      JSON.stringify(event.answer(sequence)),
    ],
  });
  return sequence;
}

/** Makes the head row of a new stream. */
export async function openStream(
  tx: Transaction,
  stream: {
    siteId: string;
    streamId: string;
    kind: 'site' | 'shutdown';
    at: string;
  },
): Promise<void> {
  await tx.query(
    `INSERT INTO stream_head (site_id, stream_id, kind, sequence, frontier, root, changed_at)
     VALUES ($1, $2, $3, 0, '{}', $4, $5)`,
    [stream.siteId, stream.streamId, stream.kind, frontierRoot([]), stream.at],
  );
}
