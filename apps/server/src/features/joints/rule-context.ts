import type { EventType } from '@seatwell/contract';
import {
  dayOf,
  type JointState,
  type MakeState,
  type RuleContext,
  shiftAt,
  type TargetEvidence,
} from '@seatwell/workflow';
import { seatingWidth_mm } from '../engineering/gasket-contact.ts';
import type { DecisionInput } from '../recording/decision.ts';
import { shutdownOf } from '../recording/shutdown-of.ts';
import { boltsInPass } from './bolts-in-pass.ts';
import type { FactsLoader } from './facts.ts';

/** The parts of payloads that name people, tools, times, packs and systems, whatever the event. */
interface Named {
  readonly tools?: { readonly toolId: string; readonly pumpId: string | null; readonly gaugeId: string | null };
  readonly gaugeIds?: readonly string[];
  readonly zeroEnergyChecks?: readonly { readonly personId: string }[];
  readonly startedAt?: string;
  readonly endedAt?: string;
  readonly pass?: number;
  readonly packId?: string | null;
  readonly systemId?: string;
  readonly procedureId?: string;
  readonly revision?: number;
}

const TIGHTENING: readonly EventType[] = ['pass-recorded', 'final-round-recorded', 'relaxation-pass-recorded'];

/** Events whose rules look at permits, a pack, or punch items: the others do not ask the database for them. */
const ASK_PERMITS: readonly EventType[] = ['break-released', 'opened'];
const ASK_PACK: readonly EventType[] = ['proven', 'leak-found'];
const ASK_PUNCH_ITEMS: readonly EventType[] = ['proven', 'hand-over-offered', 'handed-over'];

const toolIdsOf = (named: Named, make: MakeState): string[] =>
  [
    named.tools?.toolId,
    named.tools?.pumpId,
    named.tools?.gaugeId,
    ...(named.gaugeIds ?? []),
    ...make.provisionalTools,
  ].filter((id): id is string => typeof id === 'string');

/** What an event names beside its own joint: the event that it amends, the joint that it is merged with. */
export type Around = Pick<RuleContext, 'named' | 'mergeInto'>;

/** Gathers, under the locks of the command, everything that the rules of an event look at. */
export async function ruleContext(
  input: DecisionInput,
  facts: FactsLoader,
  joint: JointState,
  make: MakeState,
  payload: unknown,
  newTarget: TargetEvidence | null,
  around: Around = {},
): Promise<RuleContext> {
  const shutdown = shutdownOf(input);
  const says = payload as Named;
  const { timeZone, shifts, settings } = shutdown;
  const shift = shiftAt(input.workTime, shifts, timeZone);
  const begins = says.startedAt ?? input.workTime;
  const packId = says.packId ?? make.packs.find((pack) => pack.role !== 'reinstated')?.packId ?? null;
  const procedureKey =
    input.type === 'procedure-assigned' && says.procedureId && says.revision
      ? { procedureId: says.procedureId, revision: says.revision }
      : make.procedure;
  const procedure = procedureKey ? await facts.procedure(procedureKey.procedureId, procedureKey.revision) : null;
  const pack = packId && ASK_PACK.includes(input.type) ? await facts.pack(packId) : null;
  const tightens = TIGHTENING.includes(input.type);
  return {
    workTime: input.workTime,
    workDay: dayOf(input.workTime, timeZone),
    shiftEndDay: shift.endDay,
    shiftEnd: shift.end,
    leftOvernight:
      make.lastEventAt !== null &&
      shiftAt(make.lastEventAt, shifts, timeZone).start !== shiftAt(begins, shifts, timeZone).start,
    joint,
    make,
    settings,
    performedBy: input.performedBy,
    signerPersonId: input.signed ? input.actor.personId : null,
    signed: input.signed,
    actorRoles: [...new Set(input.actor.grants.map((grant) => grant.role))],
    persons: await facts.persons([
      ...input.performedBy,
      input.actor.personId,
      ...make.workedBy,
      ...(says.zeroEnergyChecks ?? []).map((check) => check.personId),
    ]),
    tools: await facts.tools([...toolIdsOf(says, make), ...(pack?.released?.gaugeIds ?? [])]),
    procedure,
    talks: procedure && tightens ? await facts.talks(procedure.procedureId) : [],
    permits: ASK_PERMITS.includes(input.type) ? await facts.permits(joint.jointId) : [],
    pack,
    system: says.systemId ? await facts.system(says.systemId) : null,
    newTarget,
    shortfallAccepted: newTarget?.shortfallReason != null,
    boltsInPass: boltsInPass(joint, make, procedure, says.pass),
    seatingWidth_mm: input.type === 'faces-inspected' ? seatingWidth_mm(joint, make) : null,
    elsewhereAtTheSameTime:
      tightens && says.startedAt && says.endedAt
        ? await facts.elsewhere(joint.jointId, input.performedBy, says.startedAt, says.endedAt)
        : [],
    lotRejections: input.type === 'checked' ? await facts.lotRejections(make.lotKey, make.makeId) : [],
    lotSampled: input.type === 'proven' && make.lotKey ? await facts.lotSampled(make.lotKey) : null,
    unclosedPunchA: ASK_PUNCH_ITEMS.includes(input.type) ? await facts.unclosedPunchA(joint.jointId) : 0,
    ...around,
  };
}
