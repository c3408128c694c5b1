import type { EventType } from '@seatwell/contract';
import type { NamedEvent } from '@seatwell/workflow';
import type { Transaction } from '../../platform/database/pool.ts';

export interface NamedInRecord extends NamedEvent {
  readonly type: EventType;
}

/**
 * The event of a joint that an amendment names, a row of a batch and the work of a found joint that it was merged
 * with included; null when the joint has no such event.
 */
export async function namedEvent(
  tx: Transaction,
  siteId: string,
  shutdownId: string,
  eventId: string,
  jointId: string,
): Promise<NamedInRecord | null> {
  const { rows } = await tx.query<{
    event_id: string;
    type: EventType;
    payload: unknown;
    make_id: string | null;
    performed_by: string[];
    revoked: boolean;
    in_review: boolean;
  }>(
    `WITH own AS (
        SELECT $4::uuid AS joint_id
        UNION ALL SELECT (temporary ->> 'jointId')::uuid FROM joint, jsonb_array_elements(state -> 'foundAs') AS temporary
          WHERE site_id = $1 AND shutdown_id = $2 AND joint_id = $4)
      SELECT e.event_id, e.type, coalesce(r.payload, e.payload) AS payload, coalesce(r.make_id, e.make_id) AS make_id,
        e.performed_by,
        EXISTS (SELECT 1 FROM event a WHERE a.site_id = $1 AND a.amends = e.event_id AND a.type = 'revoked'
          AND a.joint_id IN (SELECT joint_id FROM own)) AS revoked,
        cardinality(e.review_codes) > 0 AND NOT EXISTS (SELECT 1 FROM event a WHERE a.site_id = $1
          AND a.amends = e.event_id AND a.type = 'review-settled') AS in_review
      FROM event e LEFT JOIN event_row r ON r.site_id = e.site_id AND r.event_id = e.event_id AND r.joint_id IN (SELECT joint_id FROM own)
      WHERE e.site_id = $1 AND e.stream_id = $2 AND e.event_id = $3 AND (e.joint_id IN (SELECT joint_id FROM own) OR r.joint_id IS NOT NULL)`,
    [siteId, shutdownId, eventId, jointId],
  );
  const row = rows[0];
  if (!row) return null;
  return {
    eventId: row.event_id,
    type: row.type,
    payload: row.payload,
    makeId: row.make_id,
    performedBy: row.performed_by,
    revoked: row.revoked,
    inReview: row.in_review,
  };
}
