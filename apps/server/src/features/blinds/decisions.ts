import { requireAllowed } from '../../platform/access/allows.ts';
import { Problem } from '../../platform/errors/problem.ts';
import { requireJoints } from '../joints/require-joints.ts';
import { requireNamedIn } from '../joints/require-named.ts';
import type { DecisionInput, Decisions } from '../recording/decision.ts';
import { insertOrRefuse } from '../recording/insert-or-refuse.ts';
import { shutdownOf } from '../recording/shutdown-of.ts';

type BlindEvents = 'item-registered' | 'item-moved' | 'blind-planned' | 'blind-in' | 'blind-out' | 'spectacle-turned';

async function moveBlind(
  input: DecisionInput<'blind-in' | 'blind-out' | 'spectacle-turned'>,
  change: string,
  only: string,
  otherwise: string,
  more: readonly unknown[] = [],
): Promise<{ jointId: string | null }> {
  const { siteId, shutdownId } = shutdownOf(input);
  requireAllowed(input.actor, 'move-blinds', { shutdownId });
  const { rows } = await input.tx.query<{ joint_id: string | null }>(
    `UPDATE blind SET ${change} WHERE site_id = $1 AND shutdown_id = $2 AND blind_id = $3 AND ${only} RETURNING joint_id`,
    [siteId, shutdownId, input.subjectId, ...more],
  );
  const blind = rows[0];
  if (!blind) throw new Problem('stale-decision', otherwise);
  return { jointId: blind.joint_id };
}

/** Items and blinds: what joints hold, and what must come out again. */
export const blindDecisions: Decisions<BlindEvents> = {
  'item-registered': async (input) => {
    const { siteId, shutdownId } = shutdownOf(input);
    requireAllowed(input.actor, 'record-items', { shutdownId });
    const { itemId, tag, kind, jointIds, description } = input.payload;
    await requireJoints(input.tx, siteId, shutdownId, jointIds);
    await insertOrRefuse(
      input.tx,
      'item',
      {
        site_id: siteId,
        shutdown_id: shutdownId,
        item_id: itemId,
        tag,
        kind,
        description,
        joint_ids: jointIds,
        whereabouts: 'in-line',
      },
      ['tag', 'kind', 'description', 'joint_ids'],
    );
    return {};
  },

  'item-moved': async (input) => {
    const { siteId, shutdownId } = shutdownOf(input);
    requireAllowed(input.actor, 'record-items', { shutdownId });
    const { rowCount } = await input.tx.query(
      'UPDATE item SET whereabouts = $4 WHERE site_id = $1 AND shutdown_id = $2 AND item_id = $3',
      [siteId, shutdownId, input.subjectId, input.payload.whereabouts],
    );
    if (rowCount === 0) throw new Problem('not-found', 'There is no such item in this shutdown.');
    return {};
  },

  'blind-planned': async (input) => {
    const { siteId, shutdownId } = shutdownOf(input);
    requireAllowed(input.actor, 'plan-blinds', { shutdownId });
    const { payload } = input;
    await requireNamedIn(input);
    if (payload.jointId) await requireJoints(input.tx, siteId, shutdownId, [payload.jointId]);
    await insertOrRefuse(
      input.tx,
      'blind',
      {
        site_id: siteId,
        shutdown_id: shutdownId,
        blind_id: payload.blindId,
        number: payload.number,
        type: payload.type,
        purpose: payload.purpose,
        plan: JSON.stringify(payload),
        joint_id: payload.jointId,
        pack_id: payload.packId,
        out_by: payload.outBy,
        position: payload.type === 'spectacle' ? 'open' : null,
      },
      ['number', 'type', 'purpose', 'plan', 'joint_id', 'pack_id', 'out_by'],
    );
    return { jointId: payload.jointId };
  },

  'blind-in': (input) =>
    moveBlind(
      input,
      'in_at = $4, out_at = NULL',
      '(in_at IS NULL OR out_at IS NOT NULL)',
      'This blind is in already, or is not planned here.',
      [input.workTime],
    ),

  'blind-out': (input) =>
    moveBlind(
      input,
      'out_at = $4',
      'in_at IS NOT NULL AND out_at IS NULL',
      'This blind is not in, so it cannot come out.',
      [input.workTime],
    ),

  'spectacle-turned': (input) =>
    moveBlind(input, 'position = $4', "type = 'spectacle'", 'Only a spectacle blind of this shutdown can be turned.', [
      input.payload.position,
    ]),
};
