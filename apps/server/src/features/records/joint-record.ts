import type { Database } from '../../platform/database/pool.ts';
import { Problem } from '../../platform/errors/problem.ts';
import { inclusionProofs } from '../../platform/record/inclusion.ts';
import { headOf, type RecordHead } from './head-of.ts';
import { type CarriedSignature, carriedSignature, type SigningParts } from './signed-head.ts';

interface ProvenRow {
  /** position in the list, from 0 */
  readonly row: number;
  readonly said: string;
  readonly proof: readonly string[];
}

interface ProvenEvent {
  readonly sequence: number;
  /** canonical bytes */
  readonly event: string;
  /** siblings on the way to the head's root, hex */
  readonly proof: readonly string[];
  /** what a list says of this joint, proven to hang under the event */
  readonly rows: readonly ProvenRow[];
}

/** One joint's record with the proof that each event of it is under the stream's head. */
export interface JointRecord extends CarriedSignature {
  readonly format: 'seatwell-joint-record';
  readonly formatVersion: 1;
  readonly siteId: string;
  readonly streamId: string;
  readonly jointId: string;
  readonly tag: string;
  readonly exportedAt: string;
  readonly head: RecordHead;
  readonly events: readonly ProvenEvent[];
}

const hex = (hashes: readonly Buffer[]): string[] => hashes.map((hash) => hash.toString('hex'));

interface Asked {
  readonly siteId: string;
  readonly shutdownId: string;
  readonly jointId: string;
  readonly now: string;
}

/** @throws Problem `not-found` where the shutdown has no such joint */
export async function jointRecord(
  { db, signer }: SigningParts,
  { siteId, shutdownId, jointId, now }: Asked,
): Promise<JointRecord> {
  const joint = await db.query<{ tag: string }>(
    'SELECT tag FROM joint WHERE site_id = $1 AND shutdown_id = $2 AND joint_id = $3',
    [siteId, shutdownId, jointId],
  );
  const tag = joint.rows[0]?.tag;
  if (tag === undefined) throw new Problem('not-found', 'There is no such joint in this shutdown.');
  const { sequence: length, root } = await headOf(db, siteId, shutdownId);
  const head: RecordHead = { sequence: length, root };
  const found = await db.query<{ sequence: number; eventId: string; event: string; rowNumbers: number[] }>(
    `SELECT e.sequence, e.event_id AS "eventId", convert_from(e.canonical, 'UTF8') AS event,
       coalesce((SELECT array_agg(r.row ORDER BY r.row) FROM event_row r
         WHERE r.site_id = e.site_id AND r.event_id = e.event_id AND r.joint_id = $3), '{}') AS "rowNumbers"
     FROM event e WHERE e.site_id = $1 AND e.stream_id = $2 AND e.sequence <= $4
       AND (e.joint_id = $3 OR EXISTS (
         SELECT FROM event_row r WHERE r.site_id = e.site_id AND r.event_id = e.event_id AND r.joint_id = $3))
     ORDER BY e.sequence`,
    [siteId, shutdownId, jointId, head.sequence],
  );
  const { rows: leaves } = await db.query<{ leaf: Buffer }>(
    'SELECT leaf FROM event WHERE site_id = $1 AND stream_id = $2 AND sequence <= $3 ORDER BY sequence',
    [siteId, shutdownId, head.sequence],
  );
  const proofs = inclusionProofs(
    leaves.map(({ leaf }) => leaf),
    found.rows.map(({ sequence }) => sequence - 1),
  );
  const events: ProvenEvent[] = [];
  for (const { sequence, eventId, event, rowNumbers } of found.rows) {
    const rows = rowNumbers.length > 0 ? await provenRows(db, siteId, eventId, rowNumbers) : [];
    events.push({ sequence, event, proof: hex(proofs.get(sequence - 1) ?? []), rows });
  }
  return {
    format: 'seatwell-joint-record',
    formatVersion: 1,
    siteId,
    streamId: shutdownId,
    jointId,
    tag,
    exportedAt: now,
    head,
    ...(await carriedSignature(signer, { siteId, streamId: shutdownId }, head)),
    events,
  };
}

async function provenRows(
  db: Database,
  siteId: string,
  eventId: string,
  rowNumbers: readonly number[],
): Promise<ProvenRow[]> {
  const { rows } = await db.query<{ row: number; leaf: Buffer }>(
    'SELECT row, leaf FROM event_row WHERE site_id = $1 AND event_id = $2 ORDER BY row',
    [siteId, eventId],
  );
  const said = await db.query<{ row: number; said: string }>(
    `SELECT row, convert_from(canonical, 'UTF8') AS said FROM event_row
     WHERE site_id = $1 AND event_id = $2 AND row = ANY($3::int[]) ORDER BY row`,
    [siteId, eventId, rowNumbers],
  );
  const proofs = inclusionProofs(
    rows.map(({ leaf }) => leaf),
    rowNumbers,
  );
  return said.rows.map((each) => ({ ...each, proof: hex(proofs.get(each.row) ?? []) }));
}
