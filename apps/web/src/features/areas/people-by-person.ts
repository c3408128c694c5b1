import type { AreaProgress } from '@seatwell/contract';

type People = AreaProgress['people'];

/** What lapses of a person on one day. */
export interface LapsingPerson {
  readonly person: People['lapsing'][number]['person'];
  readonly validThrough: string;
  readonly qualifiedFor: readonly string[];
}

/** The methods that a person is planned for and not qualified for. */
export interface MissingPerson {
  readonly person: People['missing'][number]['person'];
  readonly methods: readonly People['missing'][number][];
}

/** One entry for a person, in the order in which they come: a crew is often planned for several methods. */
export function missingByPerson(missing: People['missing']): readonly MissingPerson[] {
  const found = new Map<string, MissingPerson>();
  for (const each of missing) {
    const { person } = each;
    found.set(person.personId, { person, methods: [...(found.get(person.personId)?.methods ?? []), each] });
  }
  return [...found.values()];
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
