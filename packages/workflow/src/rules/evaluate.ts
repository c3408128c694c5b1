import type { Criticality, Role, Severity, ShutdownSettings } from '@seatwell/contract';
import type { EventKind } from '../catalogue.ts';
import type { PackContext, RuleContext, RuleQuestion } from '../context.ts';
import { deviationRules } from './deviations.ts';
import { packRules } from './pack.ts';
import type { Finding, PackRule, Rule } from './rule.ts';
import { severityOf } from './severity.ts';
import { RULES_ABOUT_WORK } from './work-rules.ts';

/** Every rule, in one table. */
export const RULES: readonly (Rule | PackRule)[] = [...RULES_ABOUT_WORK, ...deviationRules, ...packRules];

const MAKE_RULES: readonly Rule[] = [...RULES_ABOUT_WORK, ...deviationRules];

export interface FailedRule {
  readonly code: string;
  readonly severity: Severity;
  readonly sentence: string;
  readonly why: string;
  /** what was found, with its value */
  readonly detail: string;
  readonly limit?: string | number;
  readonly remedy: string;
  readonly clearedBy: readonly Role[];
  /** tag of the joint; number of the pack for rules about a pack */
  readonly joint: string;
  /** an accepted deviation that lowered it from `reason` to `flag` */
  readonly deviation?: { readonly eventId: string; readonly reason: string };
}

export type Decision =
  | { readonly outcome: 'accept'; readonly flags: readonly FailedRule[] }
  | { readonly outcome: 'refuse'; readonly failed: readonly FailedRule[] }
  | {
      readonly outcome: 'needs-review';
      readonly codes: readonly string[];
      readonly failed: readonly FailedRule[];
    };

export interface Handling {
  readonly kind: EventKind;
  /** the work is done whatever the rules say: a fact that fails is kept, in review */
  readonly alreadyDone: boolean;
}

function failed(
  rule: Rule | PackRule,
  finding: Finding,
  criticality: Criticality,
  settings: ShutdownSettings,
  joint: string,
): FailedRule {
  return {
    code: rule.code,
    severity: severityOf(rule, criticality, settings),
    sentence: rule.sentence,
    why: rule.why,
    detail: finding.detail,
    ...(finding.limit === undefined ? {} : { limit: finding.limit }),
    remedy: rule.remedy,
    clearedBy: rule.clearedBy,
    joint,
  };
}

/** An accepted deviation lowers a rule that asks for a reason to a flag; a stop it leaves alone. */
function afterDeviation(fail: FailedRule, context: RuleContext): FailedRule {
  if (fail.severity !== 'reason') return fail;
  const accepted = context.make.deviations.find(
    (d) => d.rule === fail.code && (d.until === null || d.until >= context.workDay),
  );
  return accepted
    ? { ...fail, severity: 'flag', deviation: { eventId: accepted.eventId, reason: accepted.reason } }
    : fail;
}

/** All rules about a make that fail, strictest first, each with its severity for this joint. */
export function evaluateRules(question: RuleQuestion, context: RuleContext): readonly FailedRule[] {
  const { joint, settings } = context;
  return strictestFirst(
    MAKE_RULES.flatMap((rule) => {
      if (!asks(rule, question)) return [];
      const finding = rule.test(question, context);
      if (!finding) return [];
      return [afterDeviation(failed(rule, finding, joint.criticality, settings, joint.tag), context)];
    }),
  );
}

/** All rules about a pack that fail. They are stops whatever the criticality of its joints. */
export function evaluatePackRules(question: RuleQuestion, context: PackContext): readonly FailedRule[] {
  return strictestFirst(
    packRules.flatMap((rule) => {
      if (!asks(rule, question)) return [];
      const finding = rule.test(question, context);
      return finding ? [failed(rule, finding, 'A', context.settings, context.pack?.number ?? '')] : [];
    }),
  );
}

const asks = (rule: Rule | PackRule, question: RuleQuestion): boolean =>
  (rule.events as readonly string[]).includes(question.type);

const ORDER: readonly Severity[] = ['stop', 'reason', 'flag'];

const strictestFirst = (fails: readonly FailedRule[]): readonly FailedRule[] =>
  [...fails].sort((a, b) => ORDER.indexOf(a.severity) - ORDER.indexOf(b.severity));

/**
 * What becomes of a command whose failed rules these are. Stop and reason refuse; a fact whose work is already
 * done is kept in review instead; flags are reported and block nothing.
 */
export function decideFrom(fails: readonly FailedRule[], { kind, alreadyDone }: Handling): Decision {
  const blocking = fails.filter(({ severity }) => severity !== 'flag');
  if (blocking.length === 0) return { outcome: 'accept', flags: fails };
  return kind === 'fact' && alreadyDone
    ? { outcome: 'needs-review', codes: blocking.map(({ code }) => code), failed: fails }
    : { outcome: 'refuse', failed: fails };
}

/** The rules of a make, evaluated and decided. */
export const decide = (question: RuleQuestion, context: RuleContext, handling: Handling): Decision =>
  decideFrom(evaluateRules(question, context), handling);

/** The rules of a pack, evaluated and decided. */
export const decidePack = (question: RuleQuestion, context: PackContext, handling: Handling): Decision =>
  decideFrom(evaluatePackRules(question, context), handling);
