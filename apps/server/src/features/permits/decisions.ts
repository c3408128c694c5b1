import { requireAllowed } from '../../platform/access/allows.ts';
import { Problem } from '../../platform/errors/problem.ts';
import { requireJoints } from '../joints/require-joints.ts';
import type { Decisions } from '../recording/decision.ts';
import { insertOrRefuse } from '../recording/insert-or-refuse.ts';
import { shutdownOf } from '../recording/shutdown-of.ts';

/** Permits that operations or a chargehand records; one may cover many joints. */
export const permitDecisions: Decisions<'permit-recorded' | 'permit-withdrawn'> = {
  'permit-recorded': async (input) => {
    const { siteId, shutdownId } = shutdownOf(input);
    requireAllowed(input.actor, 'record-permit', { shutdownId });
    const { permitId, number, isolationReference, jointIds, validFrom, validUntil } = input.payload;
    if (Date.parse(validUntil) <= Date.parse(validFrom)) {
      throw new Problem('bad-input', `Permit ${number} ends before it begins.`, [
        { path: 'payload.validUntil', code: 'before-start', message: 'Give an end after the beginning.' },
      ]);
    }
    await requireJoints(input.tx, siteId, shutdownId, jointIds);
    await insertOrRefuse(
      input.tx,
      'permit',
      {
        site_id: siteId,
        shutdown_id: shutdownId,
        permit_id: permitId,
        number,
        isolation_reference: isolationReference,
        joint_ids: jointIds,
        valid_from: validFrom,
        valid_until: validUntil,
        withdrawn_at: null,
      },
      ['number', 'isolation_reference', 'joint_ids', 'valid_from', 'valid_until'],
    );
    return {};
  },

  'permit-withdrawn': async (input) => {
    const { siteId, shutdownId } = shutdownOf(input);
    requireAllowed(input.actor, 'record-permit', { shutdownId });
    const { rowCount } = await input.tx.query(
      `UPDATE permit SET withdrawn_at = $4 WHERE site_id = $1 AND shutdown_id = $2 AND permit_id = $3 AND withdrawn_at IS NULL`,
      [siteId, shutdownId, input.subjectId, input.workTime],
    );
    if (rowCount === 0) throw new Problem('not-found', 'There is no such permit in force.');
    return {};
  },
};
