import type { OfferedAction, ReasonAgainst } from './use-reason-against.ts';

/**
 * The reason against an action that all rows of a list share: it is said once beside the list, and the rows
 * have no button. Undefined where some row allows it, or the reasons differ, or there is no row.
 */
export function sharedReason(
  reasonAgainst: ReasonAgainst,
  rows: readonly { readonly actions: readonly OfferedAction[] }[],
  ...types: readonly string[]
) {
  const reasons = rows.map((row) => types.map((type) => reasonAgainst(row.actions, type)));
  const [first] = reasons.flat();
  if (first === undefined) return undefined;
  return reasons.flat().every((reason) => reason === first) ? first : undefined;
}
