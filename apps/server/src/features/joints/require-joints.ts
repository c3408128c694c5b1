import type { Transaction } from '../../platform/database/pool.ts';
import { Problem } from '../../platform/errors/problem.ts';

/** @throws Problem `not-found` naming the joints that this shutdown does not have: another shutdown's are unknown here */
export async function requireJoints(
  tx: Transaction,
  siteId: string,
  shutdownId: string,
  jointIds: readonly string[],
): Promise<void> {
  const { rows } = await tx.query<{ joint_id: string }>(
    'SELECT joint_id FROM joint WHERE site_id = $1 AND shutdown_id = $2 AND joint_id = ANY($3)',
    [siteId, shutdownId, jointIds],
  );
  const known = new Set(rows.map((row) => row.joint_id));
  const unknown = jointIds.filter((jointId) => !known.has(jointId));
  if (unknown.length > 0) {
    throw new Problem(
      'not-found',
      `This shutdown has no joint ${unknown[0]}${unknown.length > 1 ? ` and ${unknown.length - 1} more of the list` : ''}.`,
      unknown.slice(0, 50).map((jointId) => ({ path: 'payload.jointIds', code: 'unknown-joint', message: jointId })),
    );
  }
}
