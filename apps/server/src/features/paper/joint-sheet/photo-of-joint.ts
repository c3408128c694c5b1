import type { JointState } from '@seatwell/workflow';
import type { SheetReading } from './load-sources.ts';
import type { SheetPhoto } from './sheet-source.ts';

/** Photos taken when joints were last opened, by joint; one that was corrected or revoked is left out. */
export async function openingPhotos(
  { db, siteId, shutdownId }: SheetReading,
  jointIds: readonly string[],
): Promise<Map<string, string>> {
  const { rows } = await db.query<{ joint_id: string; photo: string }>({
    name: 'opening-photos',
    text: `SELECT DISTINCT ON (e.joint_id) e.joint_id, e.payload->>'photo' AS photo FROM event e
      WHERE e.site_id = $1 AND e.stream_id = $2 AND e.joint_id = ANY($3::uuid[]) AND e.type = 'opened'
        AND e.payload->>'photo' IS NOT NULL
        AND NOT EXISTS (SELECT FROM event a WHERE a.site_id = e.site_id AND a.stream_id = e.stream_id
          AND a.joint_id = e.joint_id AND a.amends = e.event_id AND a.type IN ('corrected', 'revoked'))
      ORDER BY e.joint_id, e.work_time DESC, e.sequence DESC`,
    values: [siteId, shutdownId, jointIds],
  });
  return new Map(rows.map((row) => [row.joint_id, row.photo]));
}

/** The photo of a joint; null where nobody has taken one. */
export function photoOf(joint: JointState, openings: ReadonlyMap<string, string>): SheetPhoto | null {
  const { photo } = joint.whereabouts;
  if (photo) return { hash: photo, of: 'joint' };
  if (joint.found?.photo) return { hash: joint.found.photo, of: 'found' };
  const opened = openings.get(joint.jointId);
  return opened ? { hash: opened, of: 'opened' } : null;
}
