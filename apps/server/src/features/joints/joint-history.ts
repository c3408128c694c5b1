import type { EventType, HistoryEntry } from '@seatwell/contract';
import type { Evidence, JointState } from '@seatwell/workflow';
import type { StoredSignature } from '../../platform/record/append.ts';
import type { Names } from '../reading/names.ts';
import type { Reading } from '../reading/reading.ts';
import { historyData } from './history-data.ts';

export interface HistoryRow {
  readonly eventId: string;
  readonly type: EventType;
  readonly sequence: number;
  readonly makeId: string | null;
  readonly personId: string | null;
  readonly performedBy: string[];
  readonly workTime: Date;
  readonly recordedAt: Date;
  readonly signature: StoredSignature | null;
  readonly reviewCodes: string[];
  readonly amends: string | null;
  readonly payload: unknown;
  readonly evidence: Evidence;
}

const REST = `e.person_id AS "personId", e.performed_by AS "performedBy", e.work_time AS "workTime",
  e.recorded_at AS "recordedAt", e.signature, e.review_codes AS "reviewCodes", e.amends`;

/** Every event about a joint and the found joints that were it, rows of lists included, the newest first. */
export async function historyRows(
  { db, siteId, shutdownId }: Reading,
  { jointId, foundAs = [] }: JointState,
): Promise<HistoryRow[]> {
  const { rows } = await db.query<HistoryRow>({
    name: 'history-rows',
    text: `SELECT e.event_id AS "eventId", e.type, e.sequence, e.make_id AS "makeId", e.payload, e.evidence, ${REST}
        FROM event e WHERE e.site_id = $1 AND e.stream_id = $2 AND e.joint_id = ANY($3::uuid[])
      UNION ALL
      SELECT e.event_id, e.type, e.sequence, r.make_id, r.payload, r.evidence, ${REST}
        FROM event_row r JOIN event e ON e.site_id = r.site_id AND e.event_id = r.event_id
        WHERE r.site_id = $1 AND r.stream_id = $2 AND r.joint_id = ANY($3::uuid[])
          AND NOT (e.joint_id IS NOT NULL AND e.joint_id = ANY($3::uuid[]))
      ORDER BY sequence DESC`,
    values: [siteId, shutdownId, [jointId, ...foundAs.map((found) => found.jointId)]],
  });
  return rows;
}

export const personsOfHistory = (rows: readonly HistoryRow[]): (string | null)[] =>
  rows.flatMap((row) => [row.personId, row.signature?.personId ?? null, ...row.performedBy, ...checkers(row.payload)]);

const checkers = (payload: unknown): string[] =>
  ((payload as { zeroEnergyChecks?: { personId: string }[] } | null)?.zeroEnergyChecks ?? []).map(
    (check) => check.personId,
  );

export const toolsOfHistory = (rows: readonly HistoryRow[]): (string | null)[] =>
  rows.flatMap(({ payload }) => {
    const { tools } = (payload ?? {}) as {
      tools?: { toolId: string; pumpId: string | null; gaugeId: string | null };
    };
    return tools ? [tools.toolId, tools.pumpId, tools.gaugeId] : [];
  });

/** The history as the joint page shows it: names, signatures, and what was later said about each entry. */
export function historyEntries(
  rows: readonly HistoryRow[],
  joint: JointState,
  names: Names,
  toolTags: Readonly<Record<string, string>>,
): HistoryEntry[] {
  const waiting = new Set(joint.makes.flatMap((make) => make.waiting.map((each) => each.eventId)));
  const amendments = new Map<string, HistoryEntry['amendedBy']>();
  for (const row of rows) {
    if (!row.amends) continue;
    amendments.set(row.amends, [...(amendments.get(row.amends) ?? []), { eventId: row.eventId, type: row.type }]);
  }
  const makeOf = (makeId: string | null) =>
    joint.foundAs?.find((found) => makeId !== null && found.makeId === makeId)?.intoMakeId ?? makeId;
  return rows.map((row) => ({
    eventId: row.eventId,
    type: row.type,
    sequence: row.sequence,
    makeId: makeOf(row.makeId),
    workTime: row.workTime.toISOString(),
    recordedAt: row.recordedAt.toISOString(),
    recordedBy: names.maybe(row.personId),
    performedBy: names.all(row.performedBy),
    signed: row.signature
      ? {
          person: names.of(row.signature.personId),
          role: row.signature.role,
          meaning: row.signature.meaning,
          signedAt: row.signature.signedAt,
          contentHash: row.signature.contentHash,
        }
      : null,
    reviewCodes: row.reviewCodes,
    waitsForReview: waiting.has(row.eventId),
    amendedBy: amendments.get(row.eventId) ?? [],
    amends: row.amends,
    payload: row.payload,
    flags: [...(row.evidence.flags ?? [])],
    paperForm: row.evidence.paperForm ?? null,
    data: historyData(row.type, row.payload, toolTags),
  }));
}
