import type { Criticality, Severity, ShutdownSettings } from '@seatwell/contract';
import type { PackRule, Rule } from './rule.ts';

const RANK: readonly Severity[] = ['flag', 'reason', 'stop'];

const stricter = (a: Severity, b: Severity): Severity => (RANK.indexOf(a) >= RANK.indexOf(b) ? a : b);

/**
 * How strictly a rule is taken on a joint of this criticality. Settings only raise what is shipped, and a rule
 * with a floor is never below stop.
 */
export function severityOf(
  rule: Pick<Rule | PackRule, 'code' | 'severity' | 'floor'>,
  criticality: Criticality,
  settings: Pick<ShutdownSettings, 'severities'>,
): Severity {
  if (rule.floor) return 'stop';
  const shipped = rule.severity[criticality];
  const set = settings.severities[rule.code]?.[criticality];
  return set ? stricter(shipped, set) : shipped;
}
