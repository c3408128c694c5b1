import type { Database } from '../../platform/database/pool.ts';
import { headOf } from './head-of.ts';
import { carriedSignature, type SigningParts } from './signed-head.ts';

const EVENTS_AT_ONCE = 500;

/**
 * A whole record as lines of JSON for checking offline: the head, each event's canonical bytes with the rows that hang
 * under it, and the end. Part by part, so that a record of any length passes through little memory; what is recorded
 * meanwhile is beyond the head and left out.
 */
export async function* recordLines(
  { db, signer }: SigningParts,
  siteId: string,
  stream: { readonly streamId: string; readonly name: string },
  now: string,
): AsyncGenerator<string, void> {
  const { streamId, name } = stream;
  const { sequence, root } = await headOf(db, siteId, streamId);
  const head = { sequence, root };
  const signature = await carriedSignature(signer, { siteId, streamId }, head);
  const about = { format: 'seatwell-record', formatVersion: 1, siteId, streamId, name, exportedAt: now };
  yield line({ ...about, head, ...signature });
  for (let after = 0; after < head.sequence; after += EVENTS_AT_ONCE) {
    const upTo = Math.min(after + EVENTS_AT_ONCE, head.sequence);
    const { rows } = await db.query<{ sequence: number; eventId: string; rowCount: number; event: string }>({
      name: 'record-events',
      text: `SELECT sequence, event_id AS "eventId", row_count AS "rowCount", convert_from(canonical, 'UTF8') AS event
             FROM event WHERE site_id = $1 AND stream_id = $2 AND sequence > $3 AND sequence <= $4 ORDER BY sequence`,
      values: [siteId, streamId, after, upTo],
    });
    for (const { sequence, eventId, rowCount, event } of rows) {
      const listed = rowCount > 0 ? await rowsOf(db, siteId, eventId) : [];
      yield line({ sequence, event, rows: listed });
    }
  }
  yield line({ end: head.sequence });
}

/** The canonical bytes of the rows of a list, in their order. */
async function rowsOf(db: Database, siteId: string, eventId: string): Promise<string[]> {
  const { rows } = await db.query<{ row: string }>({
    name: 'record-rows',
    text: `SELECT convert_from(canonical, 'UTF8') AS row FROM event_row WHERE site_id = $1 AND event_id = $2
           ORDER BY event_row.row`,
    values: [siteId, eventId],
  });
  return rows.map((each) => each.row);
}

const line = (value: object): string => `${JSON.stringify(value)}\n`;
