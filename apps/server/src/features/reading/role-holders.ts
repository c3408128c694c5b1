import type { PersonRef, Reach, Role } from '@seatwell/contract';
import type { Reading } from './reading.ts';

interface Holder {
  readonly role: Role;
  readonly reach: Reach;
  readonly personId: string;
  readonly name: string | null;
}

/** Something that a role moves on: where it is, as far as a grant can be limited to it. */
export interface Where {
  readonly areaId?: string | null;
  readonly packId?: string | null;
}

const AT_MOST = 5;

/** Who holds the roles of a shutdown today. */
export class RoleHolders {
  readonly #holders: readonly Holder[];
  readonly #shutdownId: string;

  constructor(holders: readonly Holder[], shutdownId: string) {
    this.#holders = holders;
    this.#shutdownId = shutdownId;
  }

  /** At most five holders whose reach covers the place; without a place, whoever reaches into the shutdown. */
  of(role: Role | null, where: Where | null = null): PersonRef[] {
    const found = new Map<string, PersonRef>();
    for (const { role: held, reach, personId, name } of this.#holders) {
      if (held === role && this.#covers(reach, where)) found.set(personId, { personId, name });
    }
    return [...found.values()].slice(0, AT_MOST);
  }

  #covers(reach: Reach, where: Where | null): boolean {
    switch (reach.kind) {
      case 'site':
        return true;
      case 'shutdown':
        return reach.id === this.#shutdownId;
      case 'area':
        return where === null || reach.id === where.areaId;
      case 'pack':
        return where === null || reach.id === where.packId;
      case 'crew':
      case 'own-assignments':
        return false;
    }
  }
}

export async function roleHolders({ db, siteId, shutdownId }: Reading): Promise<RoleHolders> {
  const { rows } = await db.query<Holder>({
    name: 'role-holders',
    text: `SELECT g.role, g.reach, p.person_id AS "personId", p.name FROM role_grant g
        JOIN account a ON a.site_id = g.site_id AND a.account_id = g.account_id AND a.closed_at IS NULL
        JOIN person p ON p.site_id = a.site_id AND p.person_id = a.person_id
      WHERE g.site_id = $1 AND g.ended_at IS NULL AND (g.starts_on IS NULL OR g.starts_on <= current_date)
        AND (g.ends_on IS NULL OR g.ends_on >= current_date)
      ORDER BY p.name COLLATE "C", p.person_id`,
    values: [siteId],
  });
  return new RoleHolders(rows, shutdownId);
}
