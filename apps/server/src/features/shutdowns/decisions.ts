import { randomBytes } from 'node:crypto';
import { DEFAULT_SETTINGS } from '@seatwell/workflow';
import { requireAllowed } from '../../platform/access/allows.ts';
import { Problem } from '../../platform/errors/problem.ts';
import { openStream } from '../../platform/record/append.ts';
import { requireNamedIn } from '../joints/require-named.ts';
import type { Decisions } from '../recording/decision.ts';
import { insertOrRefuse } from '../recording/insert-or-refuse.ts';
import { shutdownOf } from '../recording/shutdown-of.ts';
import { refuseUnknownTimeZone } from './time-zone.ts';

type ShutdownEvents = 'shutdown-opened' | 'settings-changed' | 'area-listed' | 'system-listed' | 'crew-listed';

/** Opening a shutdown, what its rules read, and what its joints are grouped by. */
export const shutdownDecisions: Decisions<ShutdownEvents> = {
  'shutdown-opened': async ({ tx, actor, payload, subjectId, now }) => {
    requireAllowed(actor, 'open-shutdown', {});
    refuseUnknownTimeZone(payload.timeZone);
    if (payload.endsOn < payload.startsOn) {
      throw new Problem(
        'bad-input',
        `The shutdown ends on ${payload.endsOn}, before it starts on ${payload.startsOn}.`,
        [{ path: 'payload.endsOn', code: 'before-start', message: 'Give an end on or after the start.' }],
      );
    }
    await insertOrRefuse(tx, 'shutdown', {
      site_id: actor.siteId,
      shutdown_id: subjectId,
      name: payload.name,
      time_zone: payload.timeZone,
      starts_on: payload.startsOn,
      ends_on: payload.endsOn,
      units: payload.units,
      area_basis: payload.areaBasis,
      shifts: JSON.stringify(payload.shifts),
      settings: JSON.stringify(DEFAULT_SETTINGS),
      sample_seed: randomBytes(32),
      opened_at: now,
    });
    await openStream(tx, { siteId: actor.siteId, streamId: subjectId, kind: 'shutdown', at: now });
    return {};
  },

  'settings-changed': async (input) => {
    const shutdown = shutdownOf(input);
    requireAllowed(input.actor, 'change-settings', { shutdownId: shutdown.shutdownId });
    const { rows } = await input.tx.query<{ settings: object }>(
      'SELECT settings FROM shutdown WHERE site_id = $1 AND shutdown_id = $2 FOR UPDATE',
      [shutdown.siteId, shutdown.shutdownId],
    );
    await input.tx.query('UPDATE shutdown SET settings = $3 WHERE site_id = $1 AND shutdown_id = $2', [
      shutdown.siteId,
      shutdown.shutdownId,
      JSON.stringify({ ...rows[0]?.settings, ...input.payload.settings }),
    ]);
    return {};
  },

  'area-listed': async (input) => {
    const shutdown = shutdownOf(input);
    requireAllowed(input.actor, 'plan-shutdown', { shutdownId: shutdown.shutdownId });
    const { areaId, code, name } = input.payload;
    await insertOrRefuse(
      input.tx,
      'area',
      { site_id: shutdown.siteId, shutdown_id: shutdown.shutdownId, area_id: areaId, code, name },
      ['code', 'name'],
    );
    return {};
  },

  'system-listed': async (input) => {
    const shutdown = shutdownOf(input);
    requireAllowed(input.actor, 'plan-shutdown', { shutdownId: shutdown.shutdownId });
    const { systemId, areaId, code, name } = input.payload;
    await requireNamedIn(input);
    await insertOrRefuse(
      input.tx,
      'system',
      { site_id: shutdown.siteId, shutdown_id: shutdown.shutdownId, system_id: systemId, area_id: areaId, code, name },
      ['area_id', 'code', 'name'],
    );
    return {};
  },

  'crew-listed': async (input) => {
    const shutdown = shutdownOf(input);
    requireAllowed(input.actor, 'plan-shutdown', { shutdownId: shutdown.shutdownId });
    const { crewId, code, company, shift, personIds } = input.payload;
    await insertOrRefuse(
      input.tx,
      'crew',
      {
        site_id: shutdown.siteId,
        shutdown_id: shutdown.shutdownId,
        crew_id: crewId,
        code,
        company,
        shift,
        person_ids: personIds,
      },
      ['code', 'company', 'shift', 'person_ids'],
    );
    return {};
  },
};
