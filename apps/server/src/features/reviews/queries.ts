import type { EventType, ReviewsAnswer } from '@seatwell/contract';
import { type JointState, RULES } from '@seatwell/workflow';
import { DOUBTFUL_TIME } from '../joints/decide-on-makes.ts';
import { actionsOf } from '../reading/actions.ts';
import { namesOf } from '../reading/names.ts';
import { loadPlaces, placeOf } from '../reading/places.ts';
import type { Reading } from '../reading/reading.ts';

type Review = ReviewsAnswer['rows'][number];

const SENTENCES: ReadonlyMap<string, { sentence: string; remedy: string }> = new Map([
  ...RULES.map((rule) => [rule.code, { sentence: rule.sentence, remedy: rule.remedy }] as const),
  [
    DOUBTFUL_TIME,
    {
      sentence: 'The clock of the device is within five minutes of the server’s.',
      remedy: 'Ask when the work was done, and correct or accept it.',
    },
  ] as const,
]);

interface EventColumns {
  readonly eventId: string;
  readonly type: EventType;
  readonly packId: string | null;
  readonly packNumber: string | null;
  readonly packAreaId: string | null;
  readonly workTime: Date;
  readonly recordedAt: Date;
  readonly personId: string | null;
  readonly performedBy: string[];
  readonly payload: unknown;
  readonly reviewCodes: string[];
}

const EVENT = `e.event_id AS "eventId", e.type, e.work_time AS "workTime", e.recorded_at AS "recordedAt",
  e.person_id AS "personId", e.performed_by AS "performedBy", e.review_codes AS "reviewCodes"`;

/** Joints with a fact in review, found by their flag. */
async function jointsInReview({ db, siteId, shutdownId }: Reading): Promise<JointState[]> {
  const { rows } = await db.query<{ state: JointState }>({
    name: 'joints-in-review',
    text: `SELECT state FROM joint WHERE site_id = $1 AND shutdown_id = $2 AND voided IS NULL
      AND flags @> ARRAY['needs-review'] ORDER BY tag_key, joint_id LIMIT 1000`,
    values: [siteId, shutdownId],
  });
  return rows.map((row) => row.state);
}

/** The events that wait, rows of lists with the payload of their joint, and kept readings of packs. */
async function waitingEvents(
  { db, siteId, shutdownId }: Reading,
  waiting: readonly { eventId: string; jointId: string }[],
): Promise<(EventColumns & { jointId: string | null })[]> {
  const { rows } = await db.query<EventColumns & { jointId: string | null }>({
    name: 'waiting-events',
    text: `SELECT ${EVENT}, w.joint_id AS "jointId", coalesce(r.payload, e.payload) AS payload,
          NULL::uuid AS "packId", NULL AS "packNumber", NULL::uuid AS "packAreaId"
        FROM unnest($3::uuid[], $4::uuid[]) AS w (event_id, joint_id)
        JOIN event e ON e.site_id = $1 AND e.event_id = w.event_id AND e.stream_id = $2
        LEFT JOIN event_row r ON r.site_id = $1 AND r.event_id = e.event_id AND r.joint_id = w.joint_id
      UNION ALL
      SELECT ${EVENT}, NULL, e.payload, t.pack_id, t.number, t.area_id
        FROM test_pack t JOIN event e ON e.site_id = t.site_id AND e.subject_id = t.pack_id AND e.stream_id = $2
          AND e.type = 'test-reading' AND cardinality(e.review_codes) > 0
        WHERE t.site_id = $1 AND t.shutdown_id = $2
          AND NOT EXISTS (SELECT FROM event a WHERE a.site_id = $1 AND a.amends = e.event_id)
      ORDER BY 4, 1`,
    values: [siteId, shutdownId, waiting.map((each) => each.eventId), waiting.map((each) => each.jointId)],
  });
  return rows;
}

/** `GET /reviews`: what was kept although rules failed, the oldest first. */
export async function reviews(reading: Reading): Promise<ReviewsAnswer> {
  const { db, siteId, shutdownId, actor } = reading;
  const states = await jointsInReview(reading);
  const waiting = states.flatMap((joint) =>
    joint.makes.flatMap((make) => make.waiting.map((each) => ({ ...each, joint, make, jointId: joint.jointId }))),
  );
  const byKey = new Map(waiting.map((each) => [`${each.eventId} ${each.jointId}`, each]));
  const [events, places] = await Promise.all([waitingEvents(reading, waiting), loadPlaces(reading)]);
  const names = await namesOf(
    db,
    siteId,
    events.flatMap((event) => [event.personId, ...event.performedBy]),
  );
  return {
    rows: events.map((event): Review => {
      const found = byKey.get(`${event.eventId} ${event.jointId}`);
      const areaId = found?.joint.whereabouts.areaId ?? event.packAreaId;
      const packIds = found?.make.packs.map((pack) => pack.packId) ?? (event.packId ? [event.packId] : []);
      const codes = found?.codes ?? event.reviewCodes;
      return {
        eventId: event.eventId,
        type: event.type,
        joint: found ? { jointId: found.joint.jointId, tag: found.joint.tag } : null,
        pack: event.packId ? { packId: event.packId, number: event.packNumber ?? '' } : null,
        makeId: found?.make.makeId ?? null,
        area: placeOf(places.areas, areaId),
        stage: found?.make.stage ?? null,
        workTime: event.workTime.toISOString(),
        recordedAt: event.recordedAt.toISOString(),
        recordedBy: names.maybe(event.personId),
        performedBy: names.all(event.performedBy),
        payload: event.payload,
        rules: codes.map((code) => ({ code, ...(SENTENCES.get(code) ?? { sentence: '', remedy: '' }) })),
        behind: found?.behind ?? null,
        version: found?.joint.version ?? null,
        actions: actionsOf(actor, ['review-settled', 'corrected'], { shutdownId, areaId, packIds }, (type) =>
          found || type === 'review-settled'
            ? null
            : { code: 'no-joint', message: 'A reading of a pack is settled and taken again, not corrected.' },
        ),
      };
    }),
  };
}
