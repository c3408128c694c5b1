import type { PersonRef } from '@seatwell/contract';
import type { Database } from '../../platform/database/pool.ts';

/** Names of persons, from the one table that has them; an erased name is null. */
export class Names {
  readonly #names: ReadonlyMap<string, string | null>;

  constructor(names: ReadonlyMap<string, string | null>) {
    this.#names = names;
  }

  of(personId: string): PersonRef {
    return { personId, name: this.#names.get(personId) ?? null };
  }

  all(personIds: readonly string[]): PersonRef[] {
    return personIds.map((personId) => this.of(personId));
  }

  maybe(personId: string | null): PersonRef | null {
    return personId ? this.of(personId) : null;
  }

  record(): Record<string, string | null> {
    return Object.fromEntries(this.#names);
  }
}

const present = (ids: readonly (string | null | undefined)[]): string[] => [
  ...new Set(ids.filter((id): id is string => typeof id === 'string')),
];

export async function namesOf(
  db: Database,
  siteId: string,
  personIds: readonly (string | null | undefined)[],
): Promise<Names> {
  const ids = present(personIds);
  if (ids.length === 0) return new Names(new Map());
  const { rows } = await db.query<{ person_id: string; name: string | null }>({
    name: 'names-of',
    text: 'SELECT person_id, name FROM person WHERE site_id = $1 AND person_id = ANY($2::uuid[])',
    values: [siteId, ids],
  });
  return new Names(new Map(rows.map((row) => [row.person_id, row.name])));
}

export async function toolTagsOf(
  db: Database,
  siteId: string,
  toolIds: readonly (string | null | undefined)[],
): Promise<Record<string, string>> {
  const ids = present(toolIds);
  if (ids.length === 0) return {};
  const { rows } = await db.query<{ tool_id: string; tag: string }>({
    name: 'tool-tags-of',
    text: 'SELECT tool_id, tag FROM tool WHERE site_id = $1 AND tool_id = ANY($2::uuid[])',
    values: [siteId, ids],
  });
  return Object.fromEntries(rows.map((row) => [row.tool_id, row.tag]));
}
