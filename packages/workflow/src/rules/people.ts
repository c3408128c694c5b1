import type { QualifiedFor } from '@seatwell/contract';
import type { PersonFacts, RuleContext } from '../context.ts';
import { type Finding, list } from './rule.ts';

export const nameOf = (context: RuleContext, personId: string): string =>
  context.persons[personId]?.name ?? `person ${personId}`;

/** Valid through means to the end of the day and of the shift, in the site's zone: days compare as text. */
function isQualified(person: PersonFacts | undefined, what: QualifiedFor, from: string, through: string): boolean {
  return (
    person?.qualifications.some(
      (q) => !q.withdrawn && q.qualifiedFor.includes(what) && q.validFrom <= from && q.validThrough >= through,
    ) ?? false
  );
}

/** Those who worked and are not qualified through the shift; nobody named fails as well. */
export function notQualified(context: RuleContext, what: QualifiedFor): Finding | null {
  if (context.performedBy.length === 0)
    return { detail: 'Nobody is named who did the work.', limit: `at least one person qualified for ${what}` };
  const missing = context.performedBy.filter(
    (id) => !isQualified(context.persons[id], what, context.workDay, context.shiftEndDay),
  );
  return missing.length === 0
    ? null
    : {
        detail: `${list(missing.map((id) => nameOf(context, id)))}: no qualification for ${what} through ${context.shiftEndDay}.`,
        limit: `valid from ${context.workDay} through ${context.shiftEndDay}`,
      };
}
