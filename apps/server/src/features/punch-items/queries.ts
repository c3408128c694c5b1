import type { PunchItemsAnswer, PunchRow } from '@seatwell/contract';
import { actionsOf } from '../reading/actions.ts';
import { namesOf } from '../reading/names.ts';
import { jointRefs, loadPlaces, packRefs, placeOf } from '../reading/places.ts';
import type { Reading } from '../reading/reading.ts';

interface PunchColumns {
  readonly punchId: string;
  readonly category: PunchRow['category'];
  readonly text: string;
  readonly jointId: string | null;
  readonly packId: string | null;
  readonly systemId: string | null;
  readonly owner: string | null;
  readonly raisedAt: Date;
  readonly raisedBy: string | null;
  readonly closedAt: Date | null;
  readonly closedHow: string | null;
}

export interface PunchFilter {
  readonly closed: 'no' | 'yes' | 'any';
  readonly jointIds?: readonly string[];
  readonly packId?: string;
  readonly systemId?: string;
}

/** Punch items of the shutdown, or of a joint, a pack and its joints, a system and its joints; A first, then by age. */
export async function punchRows(reading: Reading, filter: PunchFilter): Promise<PunchRow[]> {
  const { db, siteId, shutdownId, actor } = reading;
  const about = filter.jointIds || filter.packId || filter.systemId;
  const { rows } = await db.query<PunchColumns>({
    name: 'punch-rows',
    text: `SELECT punch_id AS "punchId", category, text, joint_id AS "jointId", pack_id AS "packId", system_id AS "systemId",
        owner, raised_at AS "raisedAt", raised_by AS "raisedBy", closed_at AS "closedAt", closed_how AS "closedHow"
      FROM punch_item WHERE site_id = $1 AND shutdown_id = $2
        AND ($3 = 'any' OR (closed_at IS NOT NULL) = ($3 = 'yes'))
        AND ($4 OR joint_id = ANY($5::uuid[]) OR pack_id = $6 OR system_id = $7)
      ORDER BY category, raised_at, punch_id`,
    values: [
      siteId,
      shutdownId,
      filter.closed,
      !about,
      filter.jointIds ?? [],
      filter.packId ?? null,
      filter.systemId ?? null,
    ],
  });
  const [names, joints, packs, places] = await Promise.all([
    namesOf(
      db,
      siteId,
      rows.map((row) => row.raisedBy),
    ),
    jointRefs(
      reading,
      rows.map((row) => row.jointId),
    ),
    packRefs(
      reading,
      rows.map((row) => row.packId),
    ),
    loadPlaces(reading),
  ]);
  return rows.map(({ jointId, packId, systemId, raisedBy, raisedAt, closedAt, ...row }) => {
    const system = placeOf(places.systems, systemId);
    return {
      ...row,
      joint: placeOf(joints, jointId),
      pack: placeOf(packs, packId),
      system: system ? { systemId: system.systemId, code: system.code } : null,
      raisedAt: raisedAt.toISOString(),
      raisedBy: names.maybe(raisedBy),
      closedAt: closedAt?.toISOString() ?? null,
      actions: actionsOf(actor, ['punch-closed'], { shutdownId, packIds: packId ? [packId] : [] }, () =>
        closedAt ? { code: 'closed', message: 'The item is closed already.' } : null,
      ),
    };
  });
}

/** `GET /punch-items` */
export async function punchItems(reading: Reading, closed: PunchFilter['closed']): Promise<PunchItemsAnswer> {
  const { shutdownId } = reading;
  return {
    rows: await punchRows(reading, { closed }),
    actions: actionsOf(reading.actor, ['punch-raised'], { shutdownId }),
  };
}
