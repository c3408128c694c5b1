import { createHmac } from 'node:crypto';
import type { EventType } from '@seatwell/contract';
import type { Evidence, FailedRule, ProcedureFacts, RuleContext, ToolFacts } from '@seatwell/workflow';
import { shiftAt } from '@seatwell/workflow';
import { contentHash } from '../../platform/record/canonical.ts';
import type { DecisionInput } from '../recording/decision.ts';
import { shutdownOf } from '../recording/shutdown-of.ts';

const TIGHTENING: readonly EventType[] = ['pass-recorded', 'final-round-recorded', 'relaxation-pass-recorded'];

/** What the record keeps of a procedure when it is assigned: enough for the fold, and the hash of the rest. */
export const procedureEvidence = (procedure: ProcedureFacts): NonNullable<Evidence['procedure']> => ({
  procedureId: procedure.procedureId,
  revision: procedure.revision,
  contentHash: contentHash(procedure.content).toString('hex'),
  code: procedure.code,
  numbering: procedure.content.numbering,
  passCount: procedure.content.passPercents.length,
  finalRound: procedure.content.finalRound,
  relaxationPass: procedure.content.relaxationPass,
  method: procedure.content.method,
});

function calibrationsInForce(
  tools: Readonly<Record<string, ToolFacts>>,
  day: string,
): NonNullable<Evidence['calibrations']> {
  return Object.values(tools).flatMap((tool) => {
    const inForce = tool.calibrations.findLast((c) => c.calibratedOn <= day && c.validThrough >= day);
    return inForce
      ? [
          {
            toolId: tool.toolId,
            calibrationId: inForce.calibrationId,
            provisional: inForce.provisional && inForce.clearedAt === null,
          },
        ]
      : [];
  });
}

/** Whether QC draws this make of its lot: by a keyed hash, so that nobody without the seed can foresee it. */
function drawn(seed: Buffer, lotKey: string, makeId: string, share: number): boolean {
  const digest = createHmac('sha256', seed).update(lotKey).update(makeId).digest();
  return digest.readUInt32BE(0) / 2 ** 32 < share;
}

/** A lot: the makes of one pack, crew, procedure and shift. */
function lotOf(input: DecisionInput, context: RuleContext): string {
  const { shifts, timeZone } = shutdownOf(input);
  const shift = shiftAt(input.workTime, shifts, timeZone);
  const pack = context.make.packs.find((each) => each.role === 'inside')?.packId ?? 'no pack';
  const procedure = context.make.procedure?.procedureId ?? 'no procedure';
  return [pack, context.make.crewId ?? 'no crew', procedure, shift.day, shift.name].join(' · ');
}

/** Ids and hashes of what the rules relied on, and what the server computed: the fold reads nothing else. */
export async function evidenceOf(
  input: DecisionInput,
  context: RuleContext,
  failed: readonly FailedRule[],
): Promise<Evidence> {
  const flags = failed.filter((rule) => rule.severity === 'flag').map((rule) => rule.code);
  const base: Evidence = flags.length > 0 ? { flags } : {};
  switch (input.type) {
    case 'procedure-assigned':
      return context.procedure ? { ...base, procedure: procedureEvidence(context.procedure) } : base;
    case 'target-approved':
      return context.newTarget ? { ...base, target: context.newTarget } : base;
    case 'break-released':
      return { ...base, permits: context.permits.map((permit) => permit.permitId) };
    default:
  }
  if (!TIGHTENING.includes(input.type)) return base;
  const qualifications = context.performedBy.flatMap((personId) =>
    (context.persons[personId]?.qualifications ?? [])
      .filter((q) => !q.withdrawn && q.validFrom <= context.workDay && q.validThrough >= context.shiftEndDay)
      .map((q) => ({ personId, qualificationId: q.qualificationId })),
  );
  const worked: Evidence = {
    ...base,
    calibrations: calibrationsInForce(context.tools, context.workDay),
    qualifications,
    talks: context.talks.map((talk) => talk.talkId),
    shiftEnd: context.shiftEnd,
  };
  if (input.type !== 'final-round-recorded') return worked;
  const lotKey = lotOf(input, context);
  const { rows } = await input.tx.query<{ sample_seed: Buffer }>(
    'SELECT sample_seed FROM shutdown WHERE site_id = $1 AND shutdown_id = $2',
    [input.actor.siteId, shutdownOf(input).shutdownId],
  );
  const seed = rows[0]?.sample_seed ?? Buffer.alloc(32);
  return { ...worked, lotKey, sampleDrawn: drawn(seed, lotKey, context.make.makeId, context.settings.sampleShare) };
}
