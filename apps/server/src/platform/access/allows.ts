import { type Action, reachCounts, roleAllows } from '@seatwell/workflow';
import { Problem } from '../errors/problem.ts';
import type { Actor, Grant } from '../sign-in/sessions.ts';

/** What an action is about, as far as a grant's reach can limit it. */
export interface ReachTarget {
  readonly shutdownId?: string | null;
  readonly areaId?: string | null;
  readonly packIds?: readonly string[];
  readonly crewId?: string | null;
  /** persons of the crew that the work is assigned to */
  readonly assignedPersonIds?: readonly string[];
}

function reaches(grant: Grant, actor: Actor, target: ReachTarget): boolean {
  const { reach } = grant;
  switch (reach.kind) {
    case 'site':
      return true;
    case 'shutdown':
      return target.shutdownId === reach.id;
    case 'area':
      return target.areaId === reach.id;
    case 'pack':
      return target.packIds?.includes(reach.id) ?? false;
    case 'crew':
      return target.crewId === reach.id;
    case 'own-assignments':
      return target.assignedPersonIds?.includes(actor.personId) ?? false;
  }
}

/** Whether one of the actor's roles allows the action within its reach. */
export const allows = (actor: Actor, action: Action, target: ReachTarget): boolean =>
  actor.grants.some(
    (grant) => roleAllows(grant.role, action) && reachCounts(grant.reach.kind, action) && reaches(grant, actor, target),
  );

/** Whether some role of the actor allows the action somewhere: the route guard, before anything is loaded. */
export const allowsSomewhere = (actor: Actor, action: Action): boolean =>
  actor.grants.some((grant) => roleAllows(grant.role, action) && reachCounts(grant.reach.kind, action));

/** @throws Problem `not-allowed` naming the action and the roles that the actor has */
export function requireAllowed(actor: Actor, action: Action, target: ReachTarget): void {
  if (allows(actor, action, target)) return;
  const roles = [...new Set(actor.grants.map((grant) => grant.role))].join(', ') || 'none';
  throw new Problem(
    'not-allowed',
    `“${action}” is not among what your roles (${roles}) may do here. Ask an administrator for a role that reaches it.`,
    [
      {
        path: '',
        code: 'not-allowed',
        message: `${action} needs another role or a wider reach.`,
      },
    ],
  );
}
