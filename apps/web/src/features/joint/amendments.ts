import type { HistoryEntry, MakeAnswer } from '@seatwell/contract';
import { CATALOGUE } from '@seatwell/workflow';

export type Amendment = 'correct' | 'revoke' | 'settle';

const amending: ReadonlySet<string> = new Set(['corrected', 'revoked', 'review-settled']);

/** What may be said about an entry of the history: facts are corrected, decisions revoked, reviews settled. */
export function amendmentsOf(entry: HistoryEntry, make: MakeAnswer | undefined): readonly Amendment[] {
  const may = (type: string) => make?.actions.find((action) => action.type === type)?.allowed ?? false;
  if (entry.waitsForReview) return may('review-settled') ? ['settle'] : [];
  const gone = entry.amendedBy.some((each) => each.type === 'corrected' || each.type === 'revoked');
  if (gone || amending.has(entry.type) || entry.makeId === null) return [];
  const { kind } = CATALOGUE[entry.type];
  if (kind === 'fact') return may('corrected') ? ['correct'] : [];
  return may('revoked') ? ['revoke'] : [];
}
