import type { BlindsAnswer, EventType, ItemsAnswer, JointPage, Payload } from '@seatwell/contract';
import { dayOf } from '@seatwell/workflow';
import { type Against, actionsOf } from '../reading/actions.ts';
import { byText } from '../reading/by-text.ts';
import { jointRefs, loadPlaces, packRefs, placeOf } from '../reading/places.ts';
import type { Reading } from '../reading/reading.ts';

type BlindRow = BlindsAnswer['rows'][number];

interface BlindColumns {
  readonly blindId: string;
  readonly number: string;
  readonly type: BlindRow['type'];
  readonly purpose: BlindRow['purpose'];
  readonly plan: Payload<'blind-planned'>;
  readonly jointId: string | null;
  readonly packId: string | null;
  readonly areaId: string | null;
  readonly outBy: string | null;
  readonly inAt: Date | null;
  readonly outAt: Date | null;
  readonly position: string | null;
}

const against =
  (state: BlindRow['state'], type: BlindRow['type']) =>
  (event: EventType): Against | null => {
    if (event === 'blind-in' && state === 'in') return { code: 'in-already', message: 'This blind is in already.' };
    if (event === 'blind-out' && state !== 'in') return { code: 'not-in', message: 'This blind is not in.' };
    if (event === 'spectacle-turned' && type !== 'spectacle')
      return { code: 'no-spectacle', message: 'Only a spectacle blind is turned.' };
    return null;
  };

/** `GET /blinds`: what is in and overdue first. */
export async function blinds(reading: Reading): Promise<BlindsAnswer> {
  const { db, siteId, shutdownId, actor, now, shutdown } = reading;
  const { rows: found } = await db.query<BlindColumns>({
    name: 'blinds',
    text: `SELECT b.blind_id AS "blindId", b.number, b.type, b.purpose, b.plan, b.joint_id AS "jointId", b.pack_id AS "packId",
        j.area_id AS "areaId", b.out_by AS "outBy", b.in_at AS "inAt", b.out_at AS "outAt", b.position
      FROM blind b LEFT JOIN joint j ON j.site_id = b.site_id AND j.shutdown_id = b.shutdown_id AND j.joint_id = b.joint_id
      WHERE b.site_id = $1 AND b.shutdown_id = $2
      ORDER BY (b.in_at IS NOT NULL AND b.out_at IS NULL) DESC, b.out_by NULLS LAST, b.number COLLATE "C"`,
    values: [siteId, shutdownId],
  });
  const [joints, packs, places] = await Promise.all([
    jointRefs(
      reading,
      found.map((row) => row.jointId),
    ),
    packRefs(
      reading,
      found.map((row) => row.packId),
    ),
    loadPlaces(reading),
  ]);
  const today = dayOf(now, shutdown.timeZone);
  const rows = found.map(({ jointId, packId, areaId, inAt, outAt, ...row }): BlindRow => {
    const state = inAt === null ? 'planned' : outAt === null ? 'in' : 'out';
    return {
      ...row,
      joint: placeOf(joints, jointId),
      pack: placeOf(packs, packId),
      area: placeOf(places.areas, areaId),
      inAt: inAt?.toISOString() ?? null,
      outAt: outAt?.toISOString() ?? null,
      state,
      overdue: state === 'in' && row.outBy !== null && row.outBy < today,
      actions: actionsOf(
        actor,
        ['blind-in', 'blind-out', 'spectacle-turned'],
        { shutdownId },
        against(state, row.type),
      ),
    };
  });
  const count = (holds: (row: BlindRow) => boolean) => rows.filter(holds).length;
  return {
    rows,
    counts: {
      planned: count((row) => row.state === 'planned'),
      in: count((row) => row.state === 'in'),
      out: count((row) => row.state === 'out'),
      overdue: count((row) => row.overdue),
    },
    actions: actionsOf(actor, ['blind-planned'], { shutdownId }),
  };
}

/** `GET /items`: what joints hold, by tag. */
export async function items(reading: Reading): Promise<ItemsAnswer> {
  const { prisma, siteId, shutdownId, actor } = reading;
  const rows = await prisma.item.findMany({ where: { siteId, shutdownId } });
  const joints = await jointRefs(
    reading,
    rows.flatMap((row) => row.jointIds),
  );
  return {
    rows: rows
      .sort(
        byText(
          (row) => row.tag,
          (row) => row.itemId,
        ),
      )
      .map(({ itemId, tag, kind, description, whereabouts, jointIds }) => ({
        itemId,
        tag,
        kind,
        description,
        whereabouts,
        joints: jointIds.map((id) => joints.get(id)).filter((joint) => joint !== undefined),
      })),
    actions: actionsOf(actor, ['item-registered', 'item-moved'], { shutdownId }),
  };
}

/** The items that a joint holds. */
export async function itemsOfJoint(
  { prisma, siteId, shutdownId }: Reading,
  jointId: string,
): Promise<JointPage['items']> {
  const rows = await prisma.item.findMany({ where: { siteId, shutdownId, jointIds: { has: jointId } } });
  return rows
    .map(({ itemId, tag, kind, whereabouts }) => ({ itemId, tag, kind, whereabouts }))
    .sort(
      byText(
        (row) => row.tag,
        (row) => row.itemId,
      ),
    );
}
