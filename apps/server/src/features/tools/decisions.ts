import { requireAllowed } from '../../platform/access/allows.ts';
import { Problem } from '../../platform/errors/problem.ts';
import type { Decisions } from '../recording/decision.ts';
import { insertOrRefuse } from '../recording/insert-or-refuse.ts';

type ToolEvents = 'tool-registered' | 'calibration-recorded' | 'calibration-cleared' | 'tool-failed';

/** Tools, pumps and gauges, and their calibrations. */
export const toolDecisions: Decisions<ToolEvents> = {
  'tool-registered': async ({ tx, actor, payload }) => {
    requireAllowed(actor, 'manage-tools', {});
    await insertOrRefuse(
      tx,
      'tool',
      {
        site_id: actor.siteId,
        tool_id: payload.toolId,
        tag: payload.tag,
        kind: payload.kind,
        maker: payload.maker,
        scale_minimum: payload.scaleMinimum,
        scale_maximum: payload.scaleMaximum,
        scale_unit: payload.scaleUnit,
        scale_division: payload.scaleDivision,
        hydraulic_area_mm2: payload.hydraulicArea_mm2 ?? null,
      },
      ['tag', 'kind', 'maker', 'scale_minimum', 'scale_maximum', 'scale_unit', 'scale_division', 'hydraulic_area_mm2'],
    );
    return {};
  },

  'calibration-recorded': async ({ tx, actor, payload, now }) => {
    requireAllowed(actor, 'manage-tools', {});
    const known = await tx.query('SELECT 1 FROM tool WHERE site_id = $1 AND tool_id = $2', [
      actor.siteId,
      payload.toolId,
    ]);
    if (known.rowCount === 0) throw new Problem('not-found', 'There is no such tool at this site.');
    if (payload.validThrough < payload.calibratedOn) {
      throw new Problem('bad-input', `Certificate ${payload.certificateNumber} ends before it begins.`, [
        {
          path: 'payload.validThrough',
          code: 'before-start',
          message: 'Give a last day on or after the day of calibration.',
        },
      ]);
    }
    await insertOrRefuse(tx, 'calibration', {
      site_id: actor.siteId,
      calibration_id: payload.calibrationId,
      tool_id: payload.toolId,
      calibrated_on: payload.calibratedOn,
      valid_through: payload.validThrough,
      certificate: payload.certificate,
      certificate_number: payload.certificateNumber,
      provisional: payload.provisional,
      pairs: JSON.stringify(payload.pairs),
      recorded_at: now,
    });
    return {};
  },

  'calibration-cleared': async ({ tx, actor, payload, now }) => {
    requireAllowed(actor, 'manage-tools', {});
    const { rowCount } = await tx.query(
      'UPDATE calibration SET cleared_at = $3 WHERE site_id = $1 AND calibration_id = $2 AND provisional AND cleared_at IS NULL',
      [actor.siteId, payload.calibrationId, now],
    );
    if (rowCount === 0)
      throw new Problem('stale-decision', 'This calibration is not provisional, or was cleared already.');
    return {};
  },

  'tool-failed': async ({ tx, actor, payload, subjectId }) => {
    requireAllowed(actor, 'manage-tools', {});
    const { rowCount } = await tx.query('UPDATE tool SET failed_on = $3 WHERE site_id = $1 AND tool_id = $2', [
      actor.siteId,
      subjectId,
      payload.foundOn,
    ]);
    if (rowCount === 0) throw new Problem('not-found', 'There is no such tool at this site.');
    return {};
  },
};
