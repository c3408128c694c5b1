import type { AreaProgress } from '@seatwell/contract';

type People = AreaProgress['people'];

/** What lapses of a person on one day. */
export interface LapsingPerson {
  readonly person: People['lapsing'][number]['person'];
  readonly validThrough: string;
  readonly qualifiedFor: readonly string[];
}

/** One line for a person and a day, the earliest first: a certificate often covers several kinds of work. */
export function lapsingByPerson(lapsing: People['lapsing']): readonly LapsingPerson[] {
  const found = new Map<string, LapsingPerson>();
  for (const { person, validThrough, qualifiedFor } of lapsing) {
    const key = `${validThrough} ${person.personId}`;
    const known = found.get(key);
    found.set(key, { person, validThrough, qualifiedFor: [...(known?.qualifiedFor ?? []), qualifiedFor] });
  }
  return [...found.values()].sort((a, b) => a.validThrough.localeCompare(b.validThrough));
}
