import type { Evidence, JointState, RecordedEvent } from '@seatwell/workflow';
import type { Database, Transaction } from '../../platform/database/pool.ts';
import { Problem } from '../../platform/errors/problem.ts';

interface EventColumns {
  readonly event_id: string;
  readonly type: string;
  readonly v: number;
  readonly sequence: number;
  readonly joint_id: string | null;
  readonly make_id: string | null;
  readonly payload: unknown;
  readonly evidence: Evidence;
  readonly account_id: string;
  readonly person_id: string | null;
  readonly performed_by: string[];
  readonly work_time: Date;
  readonly recorded_at: Date;
  readonly signed: boolean;
  readonly review_codes: string[];
}

const toRecordedEvent = (row: EventColumns): RecordedEvent => ({
  eventId: row.event_id,
  type: row.type,
  v: row.v,
  sequence: row.sequence,
  jointId: row.joint_id,
  makeId: row.make_id,
  payload: row.payload,
  evidence: row.evidence,
  accountId: row.account_id,
  recordedByPersonId: row.person_id,
  performedBy: row.performed_by,
  workTime: row.work_time.toISOString(),
  recordedAt: row.recorded_at.toISOString(),
  signed: row.signed,
  reviewCodes: row.review_codes,
});

const REST = `e.account_id, e.person_id, e.performed_by, e.work_time, e.recorded_at, e.signature IS NOT NULL AS signed, e.review_codes`;

/**
 * Locks joints in the order of their ids, so that two lists never wait for each other in a circle.
 * @throws Problem `not-found` naming those that this shutdown does not have
 */
export async function lockJoints(
  tx: Transaction,
  siteId: string,
  shutdownId: string,
  jointIds: readonly string[],
): Promise<Map<string, JointState>> {
  const wanted = [...new Set(jointIds)].sort();
  const { rows } = await tx.query<{ joint_id: string; state: JointState }>({
    name: 'lock-joints',
    text: `SELECT joint_id, state FROM joint WHERE site_id = $1 AND shutdown_id = $2 AND joint_id = ANY($3::uuid[])
           ORDER BY joint_id FOR UPDATE`,
    values: [siteId, shutdownId, wanted],
  });
  const states = new Map(rows.map((row) => [row.joint_id, row.state]));
  const unknown = wanted.filter((jointId) => !states.has(jointId));
  if (unknown.length > 0) {
    throw new Problem(
      'not-found',
      `This shutdown has no joint ${unknown[0]}.`,
      unknown.slice(0, 50).map((jointId) => ({ path: 'subjectId', code: 'unknown-joint', message: jointId })),
    );
  }
  return states;
}

/** Every event of a joint, rows of batches included, in the order of recording. */
export async function jointHistory(
  db: Database | Transaction,
  siteId: string,
  shutdownId: string,
  jointId: string,
): Promise<RecordedEvent[]> {
  const { rows } = await db.query<EventColumns>({
    name: 'joint-history',
    text: `SELECT e.event_id, e.type, e.v, e.sequence, e.joint_id, e.make_id, e.payload, e.evidence, ${REST}
        FROM event e WHERE e.site_id = $1 AND e.stream_id = $2 AND e.joint_id = $3
      UNION ALL
      SELECT e.event_id, e.type, e.v, e.sequence, r.joint_id, r.make_id, r.payload, r.evidence, ${REST}
        FROM event_row r JOIN event e ON e.site_id = r.site_id AND e.event_id = r.event_id
        WHERE r.site_id = $1 AND r.stream_id = $2 AND r.joint_id = $3
      ORDER BY sequence`,
    values: [siteId, shutdownId, jointId],
  });
  return rows.map(toRecordedEvent);
}
