import type { TalksAnswer } from '@seatwell/contract';
import { actionsOf } from '../reading/actions.ts';
import { namesOf } from '../reading/names.ts';
import { crewRefOf, loadPlaces } from '../reading/places.ts';
import type { Reading } from '../reading/reading.ts';

/** `GET /talks`: the newest first. */
export async function talks(reading: Reading): Promise<TalksAnswer> {
  const { db, siteId, shutdownId, actor } = reading;
  const { rows } = await db.query<{
    talkId: string;
    procedureId: string;
    code: string | null;
    title: string | null;
    revision: number;
    crewId: string | null;
    heldBy: string;
    heldAt: Date;
    attendees: string[];
  }>({
    name: 'talks',
    text: `SELECT t.talk_id AS "talkId", t.procedure_id AS "procedureId", p.code, p.title, t.revision, t.crew_id AS "crewId",
        t.held_by AS "heldBy", t.held_at AS "heldAt", t.attendees
      FROM talk t LEFT JOIN procedure_revision p ON p.site_id = t.site_id AND p.procedure_id = t.procedure_id
        AND p.revision = t.revision
      WHERE t.site_id = $1 AND t.shutdown_id = $2 ORDER BY t.held_at DESC, t.talk_id`,
    values: [siteId, shutdownId],
  });
  const [places, names] = await Promise.all([
    loadPlaces(reading),
    namesOf(
      db,
      siteId,
      rows.flatMap((row) => [row.heldBy, ...row.attendees]),
    ),
  ]);
  return {
    rows: rows.map(({ crewId, heldBy, heldAt, attendees, code, title, ...row }) => ({
      ...row,
      code: code ?? '',
      title: title ?? '',
      crew: crewRefOf(places, crewId),
      heldBy: names.of(heldBy),
      heldAt: heldAt.toISOString(),
      attendees: names.all(attendees),
    })),
    actions: actionsOf(actor, ['talk-held'], { shutdownId }),
  };
}
