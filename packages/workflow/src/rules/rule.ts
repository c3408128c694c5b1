import type { Criticality, EventType, Payload, Role, Severity } from '@seatwell/contract';
import type { PackContext, RuleContext } from '../context.ts';

/** Why a rule fails: what, the value, and the limit where there is one. */
export interface Finding {
  readonly detail: string;
  readonly limit?: string | number;
}

interface RuleWords {
  /** stable: `<stage>.<what>`; settings, deviations and translations go by it */
  readonly code: string;
  /** the rule in plain words, as it is printed */
  readonly sentence: string;
  readonly why: string;
  /** what clears it */
  readonly remedy: string;
  /** who clears it; for severity `reason` also who may accept a deviation */
  readonly clearedBy: readonly Role[];
  readonly severity: Readonly<Record<Criticality, Severity>>;
  /** can never go below stop (marked † in the design) */
  readonly floor: boolean;
  readonly events: readonly EventType[];
}

/** A rule about a make. */
export interface Rule extends RuleWords {
  readonly subject: 'make';
  readonly test: (question: { type: string; payload: unknown }, context: RuleContext) => Finding | null;
}

/** A rule about a test pack as a whole. */
export interface PackRule extends RuleWords {
  readonly subject: 'pack';
  readonly test: (question: { type: string; payload: unknown }, context: PackContext) => Finding | null;
}

interface Given<T extends EventType, C> {
  readonly code: string;
  readonly sentence: string;
  readonly why: string;
  readonly remedy: string;
  readonly clearedBy: readonly Role[];
  /** default: stop */
  readonly severity?: Severity | Readonly<Record<Criticality, Severity>>;
  readonly floor?: true;
  readonly events: readonly T[];
  readonly test: (payload: Payload<T>, context: C, type: T) => Finding | null;
}

function words<T extends EventType, C>(given: Given<T, C>): RuleWords {
  const { severity = 'stop', floor = false, test: _test, ...rest } = given;
  return {
    ...rest,
    floor,
    severity: typeof severity === 'string' ? { A: severity, B: severity, C: severity } : severity,
  };
}

/** A rule about a make, with the payload of its events typed. */
export function rule<const T extends EventType>(given: Given<T, RuleContext>): Rule {
  return {
    ...words(given),
    subject: 'make',
    test: (question, context) => given.test(question.payload as Payload<T>, context, question.type as T),
  };
}

/** A rule about a pack, with the payload of its events typed. */
export function packRule<const T extends EventType>(given: Given<T, PackContext>): PackRule {
  return {
    ...words(given),
    subject: 'pack',
    test: (question, context) => given.test(question.payload as Payload<T>, context, question.type as T),
  };
}

/** "12, 14 and 16", for sentences. */
export function list(words: readonly string[]): string {
  if (words.length <= 1) return words[0] ?? '';
  return `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;
}
