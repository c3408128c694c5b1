import { requireAllowed } from '../../platform/access/allows.ts';
import type { Transaction } from '../../platform/database/pool.ts';
import { Problem } from '../../platform/errors/problem.ts';
import { requireJoints } from '../joints/require-joints.ts';
import { requireNamedIn } from '../joints/require-named.ts';
import type { Decisions } from '../recording/decision.ts';
import { insertOrRefuse } from '../recording/insert-or-refuse.ts';
import { shutdownOf } from '../recording/shutdown-of.ts';

interface PunchItem {
  readonly punchId: string;
  readonly category: 'A' | 'B' | 'C';
  readonly text: string;
  readonly jointId: string | null;
  readonly packId: string | null;
  readonly systemId: string | null;
  readonly owner: string | null;
}

/** Writes a punch item and counts it at its joint. */
export async function raisePunchItem(
  tx: Transaction,
  where: { siteId: string; shutdownId: string },
  item: PunchItem,
  raised: { at: string; by: string | null },
): Promise<void> {
  await insertOrRefuse(tx, 'punch_item', {
    site_id: where.siteId,
    shutdown_id: where.shutdownId,
    punch_id: item.punchId,
    category: item.category,
    text: item.text,
    joint_id: item.jointId,
    pack_id: item.packId,
    system_id: item.systemId,
    owner: item.owner,
    raised_at: raised.at,
    raised_by: raised.by,
  });
  if (item.jointId) await recountPunchItems(tx, where, item.jointId);
}

/** Puts the number of unclosed items beside the joint, so that lists need not count. */
export async function recountPunchItems(
  tx: Transaction,
  { siteId, shutdownId }: { siteId: string; shutdownId: string },
  jointId: string,
): Promise<void> {
  await tx.query(
    `UPDATE joint j SET punch_a = c.a, punch_b = c.b, punch_c = c.c
     FROM (SELECT count(*) FILTER (WHERE category = 'A') AS a, count(*) FILTER (WHERE category = 'B') AS b,
             count(*) FILTER (WHERE category = 'C') AS c
           FROM punch_item WHERE site_id = $1 AND shutdown_id = $2 AND joint_id = $3 AND closed_at IS NULL) c
     WHERE j.site_id = $1 AND j.shutdown_id = $2 AND j.joint_id = $3`,
    [siteId, shutdownId, jointId],
  );
}

/**
 * The joint that an item stands at: of a found joint that was merged, the joint of the register.
 * @throws Problem `not-found` for a joint that this shutdown does not have
 */
async function jointInRegister(
  tx: Transaction,
  { siteId, shutdownId }: { siteId: string; shutdownId: string },
  jointId: string | null,
): Promise<string | null> {
  if (!jointId) return null;
  await requireJoints(tx, siteId, shutdownId, [jointId]);
  const { rows } = await tx.query<{ into: string | null }>(
    `SELECT state -> 'voided' ->> 'intoJointId' AS into FROM joint
     WHERE site_id = $1 AND shutdown_id = $2 AND joint_id = $3`,
    [siteId, shutdownId, jointId],
  );
  return rows[0]?.into ?? jointId;
}

/** Punch items: A before test or start-up, B before hand-over, C after. */
export const punchDecisions: Decisions<'punch-raised' | 'punch-closed'> = {
  'punch-raised': async (input) => {
    const shutdown = shutdownOf(input);
    requireAllowed(input.actor, 'raise-punch', { shutdownId: shutdown.shutdownId });
    await requireNamedIn(input);
    const jointId = await jointInRegister(input.tx, shutdown, input.payload.jointId);
    const item = { ...input.payload, jointId };
    await raisePunchItem(input.tx, shutdown, item, { at: input.workTime, by: input.actor.personId });
    return { jointId };
  },

  'punch-closed': async (input) => {
    const shutdown = shutdownOf(input);
    const { rows } = await input.tx.query<{ joint_id: string | null; pack_id: string | null; closed_at: Date | null }>(
      'SELECT joint_id, pack_id, closed_at FROM punch_item WHERE site_id = $1 AND shutdown_id = $2 AND punch_id = $3 FOR UPDATE',
      [shutdown.siteId, shutdown.shutdownId, input.subjectId],
    );
    const item = rows[0];
    if (!item) throw new Problem('not-found', 'There is no such punch item in this shutdown.');
    if (item.closed_at)
      throw new Problem('stale-decision', `This item was closed at ${item.closed_at.toISOString()} already.`);
    requireAllowed(input.actor, 'close-punch', {
      shutdownId: shutdown.shutdownId,
      packIds: item.pack_id ? [item.pack_id] : [],
    });
    await input.tx.query(
      'UPDATE punch_item SET closed_at = $4, closed_how = $5 WHERE site_id = $1 AND shutdown_id = $2 AND punch_id = $3',
      [shutdown.siteId, shutdown.shutdownId, input.subjectId, input.now, input.payload.how],
    );
    if (item.joint_id) await recountPunchItems(input.tx, shutdown, item.joint_id);
    return { jointId: item.joint_id };
  },
};
