import type { Payload } from '@seatwell/contract';
import { RULES } from '@seatwell/workflow';
import { requireAllowed } from '../../platform/access/allows.ts';
import { refuse } from '../joints/decide-on-makes.ts';
import { raisePunchItem } from '../punch-items/decisions.ts';
import type { DecisionInput, Recording } from '../recording/decision.ts';
import { shutdownOf } from '../recording/shutdown-of.ts';
import { lockPack } from './lock-pack.ts';

interface KeptReading {
  readonly payload: Payload<'test-reading'>;
  readonly performedBy: readonly string[];
  readonly settled: boolean;
}

/** A reading of this pack that is kept in review; null when the subject of the settlement is no pack, or has none. */
export async function keptReading(input: DecisionInput<'review-settled'>): Promise<KeptReading | null> {
  const { siteId, shutdownId } = shutdownOf(input);
  const { rows } = await input.tx.query<KeptReading>(
    `SELECT e.payload, e.performed_by AS "performedBy",
        EXISTS (SELECT FROM event a WHERE a.site_id = $1 AND a.amends = e.event_id) AS settled
      FROM event e WHERE e.site_id = $1 AND e.stream_id = $2 AND e.event_id = $3 AND e.subject_id = $4
        AND e.type = 'test-reading' AND cardinality(e.review_codes) > 0`,
    [siteId, shutdownId, input.payload.eventId, input.subjectId],
  );
  return rows[0] ?? null;
}

function stop(code: string, number: string, detail: string): never {
  const rule = RULES.find((each) => each.code === code);
  if (!rule) throw new Error(`The table has no rule ${code}.`);
  const { sentence: message, why, remedy } = rule;
  refuse([{ rule: code, severity: 'stop', joint: number, message, why, remedy, detail }]);
}

/** Deals with a reading that failed a rule or came from a doubtful clock: accepted it counts, rejected it never was. */
export async function settleReading(input: DecisionInput<'review-settled'>, reading: KeptReading): Promise<Recording> {
  const { siteId, shutdownId } = shutdownOf(input);
  const { eventId, outcome, reason, punchId } = input.payload;
  const pack = await lockPack(input.tx, siteId, shutdownId, input.subjectId);
  requireAllowed(input.actor, 'settle-review', { shutdownId, areaId: pack.areaId, packIds: [input.subjectId] });
  if (reading.settled) stop('review-settled.in-review', pack.number, 'This reading was settled already.');
  if (reading.performedBy.includes(input.actor.personId))
    stop('review-settled.not-own-work', pack.number, 'You took this reading.');
  if (outcome === 'accept-with-punch-item' && punchId === null)
    stop('review-settled.punch-named', pack.number, 'No punch item is named.');
  if (outcome !== 'reject-as-not-done') {
    await input.tx.query(
      `UPDATE test_pack SET readings = readings || jsonb_build_array($4::jsonb), version = version + 1
       WHERE site_id = $1 AND shutdown_id = $2 AND pack_id = $3`,
      [siteId, shutdownId, input.subjectId, JSON.stringify(reading.payload)],
    );
  }
  if (outcome === 'accept-with-punch-item') {
    const place = { jointId: null, packId: input.subjectId, systemId: null, owner: null };
    await raisePunchItem(
      input.tx,
      { siteId, shutdownId },
      { punchId: punchId ?? input.eventId, category: 'B', text: reason, ...place },
      { at: input.now, by: input.actor.personId },
    );
  }
  return { amends: eventId, version: pack.version + (outcome === 'reject-as-not-done' ? 0 : 1) };
}
