import { dayOf, decidePack, eventKind, shiftAt } from '@seatwell/workflow';
import { requireAllowed } from '../../platform/access/allows.ts';
import { Problem } from '../../platform/errors/problem.ts';
import { DOUBTFUL_TIME, refuse, toPackAnswer } from '../joints/decide-on-makes.ts';
import { FactsLoader } from '../joints/facts.ts';
import { naturalKey } from '../joints/natural-key.ts';
import { requireNamedIn } from '../joints/require-named.ts';
import type { DecisionInput, Decisions } from '../recording/decision.ts';
import { insertOrRefuse } from '../recording/insert-or-refuse.ts';
import { shutdownOf } from '../recording/shutdown-of.ts';
import { lockPack } from './lock-pack.ts';

/** The rules of a pack as a whole: what must be true before pressure goes on. */
async function judgePack(input: DecisionInput, gaugeIds: readonly string[]) {
  const shutdown = shutdownOf(input);
  const facts = new FactsLoader(input.tx, shutdown.siteId, shutdown.shutdownId);
  const shift = shiftAt(input.workTime, shutdown.shifts, shutdown.timeZone);
  return decidePack(
    { type: input.type, payload: input.payload },
    {
      workTime: input.workTime,
      workDay: dayOf(input.workTime, shutdown.timeZone),
      shiftEndDay: shift.endDay,
      settings: shutdown.settings,
      tools: await facts.tools(gaugeIds),
      pack: await facts.pack(input.subjectId),
      signed: input.signed,
      actorRoles: [...new Set(input.actor.grants.map((grant) => grant.role))],
    },
    { kind: eventKind(input.type, input.payload), alreadyDone: input.alreadyDone },
  );
}

/** Test packs: planned, released to pressure, read. */
export const packDecisions: Decisions<'pack-planned' | 'pack-released' | 'test-reading'> = {
  'pack-planned': async (input) => {
    const { siteId, shutdownId } = shutdownOf(input);
    const { payload } = input;
    requireAllowed(input.actor, 'plan-packs', { shutdownId, areaId: payload.areaId });
    await requireNamedIn(input);
    await insertOrRefuse(
      input.tx,
      'test_pack',
      {
        site_id: siteId,
        shutdown_id: shutdownId,
        pack_id: payload.packId,
        number: payload.number,
        number_key: naturalKey(payload.number),
        system_id: payload.systemId,
        area_id: payload.areaId,
        plan: JSON.stringify(payload),
        readings: '[]',
        planned_on: payload.plannedOn,
        version: 1,
      },
      ['number', 'number_key', 'system_id', 'area_id', 'plan', 'planned_on'],
    );
    return { version: 1 };
  },

  'pack-released': async (input) => {
    const { siteId, shutdownId } = shutdownOf(input);
    const pack = await lockPack(input.tx, siteId, shutdownId, input.subjectId);
    requireAllowed(input.actor, 'release-pack', { shutdownId, areaId: pack.areaId, packIds: [input.subjectId] });
    if (input.versionSeen !== pack.version) {
      throw new Problem(
        'stale-decision',
        `Pack ${pack.number} is at version ${pack.version}, you saw ${input.versionSeen ?? 'none'}. Look at it again.`,
      );
    }
    const decided = await judgePack(input, input.payload.gaugeIds);
    if (decided.outcome === 'refuse') refuse(decided.failed.map((rule) => toPackAnswer(pack.number, rule)));
    await input.tx.query(
      `UPDATE test_pack SET released = $4, released_at = $5, version = version + 1
       WHERE site_id = $1 AND shutdown_id = $2 AND pack_id = $3`,
      [siteId, shutdownId, input.subjectId, JSON.stringify(input.payload), input.now],
    );
    return { version: pack.version + 1, evidence: { packId: input.subjectId } };
  },

  'test-reading': async (input) => {
    const { siteId, shutdownId } = shutdownOf(input);
    const pack = await lockPack(input.tx, siteId, shutdownId, input.subjectId);
    requireAllowed(input.actor, 'record-test', { shutdownId, areaId: pack.areaId, packIds: [input.subjectId] });
    const decided = await judgePack(input, input.payload.gaugeIds);
    if (decided.outcome === 'refuse') refuse(decided.failed.map((rule) => toPackAnswer(pack.number, rule)));
    const reviewCodes = [
      ...(decided.outcome === 'needs-review' ? decided.codes : []),
      ...(input.doubtfulTime ? [DOUBTFUL_TIME] : []),
    ];
    if (reviewCodes.length === 0) {
      await input.tx.query(
        `UPDATE test_pack SET readings = readings || jsonb_build_array($4::jsonb), version = version + 1
         WHERE site_id = $1 AND shutdown_id = $2 AND pack_id = $3`,
        [siteId, shutdownId, input.subjectId, JSON.stringify(input.payload)],
      );
    }
    return { version: pack.version + 1, reviewCodes };
  },
};
