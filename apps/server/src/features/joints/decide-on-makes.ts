import type { EventType, FailedRuleAnswer } from '@seatwell/contract';
import {
  actionFor,
  decide,
  eventKind,
  type FailedRule,
  foldHistory,
  foldJoint,
  type JointState,
  needsFullFold,
  type RecordedEvent,
} from '@seatwell/workflow';
import { type ReachTarget, requireAllowed } from '../../platform/access/allows.ts';
import { Problem } from '../../platform/errors/problem.ts';
import { computeTarget } from '../engineering/compute-target.ts';
import type { DecisionInput } from '../recording/decision.ts';
import { shutdownOf } from '../recording/shutdown-of.ts';
import { eventToFold } from './event-to-fold.ts';
import { evidenceOf } from './evidence.ts';
import type { FactsLoader } from './facts.ts';
import { jointHistory } from './joint-store.ts';
import { refuseStale } from './refuse-stale.ts';
import { requireNamed } from './require-named.ts';
import { type Around, ruleContext } from './rule-context.ts';
import { shownMake } from './shown-make.ts';

/** One joint of a command: for a list there are many. */
export interface JointRow {
  readonly jointId: string;
  readonly makeId: string | null;
  readonly versionSeen: number | null;
  readonly payload: unknown;
}

export interface Judged {
  readonly joint: JointState;
  readonly after: JointState;
  readonly makeId: string | null;
  readonly evidence: RecordedEvent['evidence'];
  readonly reviewCodes: readonly string[];
  /** flags of an accepted event, or the rules that a kept fact failed */
  readonly failed: readonly FailedRuleAnswer[];
}

export type Judgement =
  | { readonly outcome: 'recorded'; readonly judged: Judged }
  | { readonly outcome: 'refused'; readonly joint: JointState; readonly failed: readonly FailedRuleAnswer[] };

export const DOUBTFUL_TIME = 'time.device-clock';

export const toAnswer = (joint: JointState, rule: FailedRule): FailedRuleAnswer => ({
  rule: rule.code,
  severity: rule.severity,
  joint: joint.tag,
  message: rule.sentence,
  why: rule.why,
  remedy: rule.remedy,
  detail: rule.detail,
});

export const toPackAnswer = (number: string, rule: FailedRule): FailedRuleAnswer => ({
  rule: rule.code,
  severity: rule.severity,
  joint: number,
  message: rule.sentence,
  why: rule.why,
  remedy: rule.remedy,
  detail: rule.detail,
});

/** What a grant's reach is held against: the joint's area, packs and crew. */
export async function reachOf(
  facts: FactsLoader,
  shutdownId: string,
  joint: JointState,
  makeId: string | null,
): Promise<ReachTarget> {
  const make = joint.makes.find((each) => each.makeId === makeId) ?? shownMake(joint);
  return {
    shutdownId,
    areaId: joint.whereabouts.areaId,
    packIds: make?.packs.map((pack) => pack.packId) ?? [],
    crewId: make?.crewId ?? null,
    assignedPersonIds: make?.crewId ? await facts.crewPersons(make.crewId) : [],
  };
}

/**
 * Judges one joint's part of a command: who may, whether the version seen still holds, the rules, and the fold.
 * Nothing is written here.
 */
export async function judgeJoint(
  input: DecisionInput,
  facts: FactsLoader,
  joint: JointState,
  row: JointRow,
  around: Around = {},
): Promise<Judgement> {
  const { siteId, shutdownId } = shutdownOf(input);
  const type: EventType = input.type;
  const kind = eventKind(type, row.payload);
  requireAllowed(input.actor, actionFor(type, row.payload), await reachOf(facts, shutdownId, joint, row.makeId));
  if (kind === 'decision' && row.versionSeen !== joint.version) await refuseStale(input, facts, joint, row.versionSeen);
  const make = joint.makes.find((each) => each.makeId === row.makeId) ?? (row.makeId ? null : shownMake(joint));
  if (!make) {
    throw new Problem('not-found', `${joint.tag} has no make ${row.makeId ?? ''}. Plan one first.`, [
      { path: 'makeId', code: 'unknown-make', message: joint.tag },
    ]);
  }
  await requireNamed(facts, type, row.payload, joint.jointId);
  // Without a procedure there is nothing to compute by: the rules say so, beside whatever else stops it.
  const newTarget =
    type === 'target-approved' && make.procedure ? await computeTarget(facts, joint, make, row.payload as never) : null;
  const context = await ruleContext(input, facts, joint, make, row.payload, newTarget, around);
  const decided = decide({ type, payload: row.payload }, context, { kind, alreadyDone: input.alreadyDone });
  if (decided.outcome === 'refuse') {
    return { outcome: 'refused', joint, failed: decided.failed.map((rule) => toAnswer(joint, rule)) };
  }
  const failed = decided.outcome === 'accept' ? decided.flags : decided.failed;
  const reviewCodes = [
    ...(decided.outcome === 'needs-review' ? decided.codes : []),
    ...(input.doubtfulTime ? [DOUBTFUL_TIME] : []),
  ];
  const evidence = await evidenceOf(input, context, failed);
  const { jointId } = joint;
  const event = eventToFold(input, { jointId, makeId: row.makeId, payload: row.payload, evidence, reviewCodes });
  const after = needsFullFold(joint, event)
    ? refold([...(await jointHistory(input.tx, siteId, shutdownId, jointId)), event])
    : foldJoint(joint, event);
  return {
    outcome: 'recorded',
    judged: {
      joint,
      after,
      makeId: event.makeId,
      evidence,
      reviewCodes,
      failed: failed.map((rule) => toAnswer(joint, rule)),
    },
  };
}

function refold(events: readonly RecordedEvent[]): JointState {
  const state = foldHistory(events);
  if (!state) throw new Error('A joint without events cannot be folded.');
  return state;
}

/** @throws Problem `rules-not-met` with every failed rule of every joint */
export function refuse(failed: readonly FailedRuleAnswer[]): never {
  const stops = failed.filter((rule) => rule.severity !== 'flag');
  const joints = [...new Set(stops.map((rule) => rule.joint))];
  throw new Problem(
    'rules-not-met',
    `${stops.length === 1 ? 'One rule stops' : `${stops.length} rules stop`} this on ${joints.slice(0, 5).join(', ')}${joints.length > 5 ? ` and ${joints.length - 5} more joints` : ''}. Nothing was recorded.`,
    failed.map((rule) => ({
      path: rule.joint ?? '',
      code: rule.rule,
      message: `${rule.message} ${rule.detail}`.trim(),
      severity: rule.severity,
      joint: rule.joint,
      rule: rule.rule,
      why: rule.why,
      remedy: rule.remedy,
      detail: rule.detail,
    })),
  );
}
