import type { PermitRow, PermitsAnswer } from '@seatwell/contract';
import { actionsOf } from '../reading/actions.ts';
import { jointRefs } from '../reading/places.ts';
import type { Reading } from '../reading/reading.ts';

interface PermitColumns {
  readonly permitId: string;
  readonly number: string;
  readonly isolationReference: string | null;
  readonly jointIds: string[];
  readonly validFrom: Date;
  readonly validUntil: Date;
  readonly withdrawnAt: Date | null;
}

/** Permits of the shutdown, or those that cover one joint; the newest first. */
export async function permitRows(reading: Reading, jointId: string | null): Promise<PermitRow[]> {
  const { db, siteId, shutdownId, actor, now } = reading;
  const { rows } = await db.query<PermitColumns>(
    `SELECT permit_id AS "permitId", number, isolation_reference AS "isolationReference", joint_ids AS "jointIds",
        valid_from AS "validFrom", valid_until AS "validUntil", withdrawn_at AS "withdrawnAt"
      FROM permit WHERE site_id = $1 AND shutdown_id = $2${jointId ? ' AND joint_ids @> ARRAY[$3::uuid]' : ''}
      ORDER BY valid_from DESC, number`,
    jointId ? [siteId, shutdownId, jointId] : [siteId, shutdownId],
  );
  const joints = await jointRefs(
    reading,
    rows.flatMap((row) => row.jointIds),
  );
  const at = Date.parse(now);
  return rows.map(({ jointIds, validFrom, validUntil, withdrawnAt, ...row }) => ({
    ...row,
    validFrom: validFrom.toISOString(),
    validUntil: validUntil.toISOString(),
    withdrawnAt: withdrawnAt?.toISOString() ?? null,
    inForce: withdrawnAt === null && validFrom.getTime() <= at && at < validUntil.getTime(),
    joints: jointIds.map((id) => joints.get(id)).filter((joint) => joint !== undefined),
    actions: actionsOf(actor, ['permit-withdrawn'], { shutdownId }, () =>
      withdrawnAt ? { code: 'withdrawn', message: 'The permit is withdrawn already.' } : null,
    ),
  }));
}

/** `GET /permits` */
export async function permits(reading: Reading): Promise<PermitsAnswer> {
  const { actor, shutdownId } = reading;
  return { rows: await permitRows(reading, null), actions: actionsOf(actor, ['permit-recorded'], { shutdownId }) };
}
