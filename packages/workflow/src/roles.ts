import type { Reach, Role } from '@seatwell/contract';

export type ReachKind = Reach['kind'];

export interface ActionEntry {
  /** roles that may, or everyone who is signed in */
  readonly roles: readonly Role[] | 'anyone';
  /** a grant counts for this action only when its reach is of one of these kinds and covers the subject */
  readonly reach: readonly ReachKind[];
  readonly says: string;
}

const SITE = ['site'] as const;
const SHUTDOWN = ['site', 'shutdown'] as const;
const AREA = ['site', 'shutdown', 'area'] as const;
const PACK = ['site', 'shutdown', 'area', 'pack'] as const;
const WORK = ['site', 'shutdown', 'area', 'pack', 'crew', 'own-assignments'] as const;

const QUALIFIED = ['technician', 'chargehand', 'inspector'] as const;
const CREW = ['technician', 'chargehand', 'store'] as const;

/** Role × action × reach: the one table of who may do what. */
export const ACTIONS = {
  'read-register': { roles: 'anyone', reach: WORK, says: 'see joints, packs, areas and their state' },
  'read-records': { roles: 'anyone', reach: WORK, says: 'see events, evidence and history' },
  'use-calculation': { roles: 'anyone', reach: WORK, says: 'calculate without recording' },
  'upload-file': { roles: 'anyone', reach: WORK, says: 'store a photo or certificate' },
  'print-sheets': { roles: 'anyone', reach: WORK, says: 'print joint sheets and lists' },
  'import-register': { roles: ['coordinator', 'engineer'], reach: SHUTDOWN, says: 'import the register' },

  'open-shutdown': { roles: ['coordinator', 'administrator'], reach: SITE, says: 'open a shutdown' },
  'change-settings': {
    roles: ['coordinator', 'administrator'],
    reach: SHUTDOWN,
    says: 'change what the rules of a shutdown read',
  },
  'plan-shutdown': {
    roles: ['coordinator', 'administrator'],
    reach: SHUTDOWN,
    says: 'list areas, systems and crews',
  },
  'record-permit': { roles: ['operations', 'chargehand'], reach: WORK, says: 'record and withdraw permits' },
  'hold-talk': { roles: ['chargehand'], reach: WORK, says: 'hold the pre-job talk' },
  'raise-punch': { roles: 'anyone', reach: WORK, says: 'raise a punch item' },
  'close-punch': { roles: ['inspector'], reach: PACK, says: 'close a punch item' },
  'list-joints': { roles: ['coordinator', 'engineer'], reach: AREA, says: 'list and specify joints' },
  'find-joint': { roles: 'anyone', reach: WORK, says: 'raise a found joint' },
  'void-joint': { roles: ['coordinator'], reach: AREA, says: 'void or merge a joint' },
  'plan-makes': { roles: ['coordinator'], reach: AREA, says: 'plan, assign and cancel makes' },
  'record-items': { roles: CREW, reach: WORK, says: 'register and move items' },
  'plan-blinds': { roles: ['coordinator'], reach: AREA, says: 'plan blinds' },
  'move-blinds': { roles: CREW, reach: WORK, says: 'record blinds in, out and turned' },
  'assign-procedure': { roles: ['engineer'], reach: AREA, says: 'assign a procedure' },
  'approve-target': { roles: ['engineer'], reach: AREA, says: 'approve targets and target tables' },
  'place-hold': { roles: ['inspector', 'engineer', 'coordinator'], reach: PACK, says: 'place a hold' },
  'release-hold': { roles: ['inspector', 'engineer', 'coordinator'], reach: PACK, says: 'release a hold' },
  'release-break': { roles: ['operations'], reach: PACK, says: 'release a joint to break' },
  'open-joint': { roles: QUALIFIED, reach: WORK, says: 'record opening' },
  'inspect-faces': { roles: QUALIFIED, reach: WORK, says: 'record the condition of the faces' },
  'nip-up': { roles: QUALIFIED, reach: WORK, says: 'record nipping up' },
  tighten: { roles: QUALIFIED, reach: WORK, says: 'record passes and replaced studs' },
  loosen: { roles: QUALIFIED, reach: WORK, says: 'record loosening' },
  'report-leak': { roles: 'anyone', reach: WORK, says: 'report a leak' },
  'check-own-work': { roles: QUALIFIED, reach: WORK, says: 'check with a mate' },
  'check-as-chargehand': { roles: ['chargehand', 'inspector'], reach: WORK, says: 'check as chargehand' },
  'check-quality': { roles: ['inspector'], reach: PACK, says: 'check as QC' },
  witness: { roles: ['witness'], reach: PACK, says: 'sign or waive a witness point' },
  'accept-deviation': { roles: ['engineer', 'inspector'], reach: PACK, says: 'accept a deviation' },
  'plan-packs': { roles: ['coordinator', 'inspector'], reach: AREA, says: 'plan test packs' },
  'release-pack': { roles: ['inspector'], reach: PACK, says: 'release a pack to pressure' },
  'record-test': { roles: QUALIFIED, reach: PACK, says: 'record test readings' },
  prove: { roles: ['inspector'], reach: PACK, says: 'declare a joint proven' },
  'offer-hand-over': { roles: ['coordinator'], reach: AREA, says: 'offer a system to operations' },
  'hand-over': { roles: ['operations'], reach: AREA, says: 'take a system over' },
  'take-back': { roles: ['coordinator', 'operations'], reach: AREA, says: 'take back what was handed over' },
  correct: { roles: ['technician', 'chargehand', 'inspector', 'engineer'], reach: WORK, says: 'correct a fact' },
  revoke: {
    roles: ['engineer', 'inspector', 'coordinator', 'operations', 'witness'],
    reach: AREA,
    says: 'revoke a decision of a kind that one may take',
  },
  'settle-review': { roles: ['inspector', 'engineer'], reach: PACK, says: 'settle a fact in review' },

  'manage-settings': { roles: ['administrator', 'engineer'], reach: SITE, says: 'change the settings of the site' },
  'manage-people': { roles: ['administrator', 'coordinator'], reach: SITE, says: 'register and erase people' },
  'manage-accounts': { roles: ['administrator'], reach: SITE, says: 'open accounts and grant roles' },
  operate: {
    roles: ['administrator'],
    reach: SITE,
    says: 'see how the server does, retry jobs and let people sign in again',
  },
  'record-qualifications': {
    roles: ['inspector', 'administrator'],
    reach: SITE,
    says: 'record and withdraw qualifications',
  },
  'manage-tools': { roles: ['inspector'], reach: SITE, says: 'register tools and their calibrations' },
  'draft-procedure': { roles: ['engineer'], reach: SITE, says: 'draft a procedure' },
  'approve-procedure': { roles: ['engineer'], reach: SITE, says: 'approve and supersede procedures' },
  'enter-engineering-data': { roles: ['engineer'], reach: SITE, says: 'enter gasket, lubricant and maker data' },
  'manage-own-keys': { roles: 'anyone', reach: WORK, says: 'enrol and revoke a device' },
} as const satisfies Record<string, ActionEntry>;

export type Action = keyof typeof ACTIONS;

/** Whether a role may take an action at all; the reach of the grant is the caller's second question. */
export function roleAllows(role: Role, action: Action): boolean {
  const roles: readonly Role[] | 'anyone' = ACTIONS[action].roles;
  return roles === 'anyone' || roles.includes(role);
}

/** Whether a grant of this reach kind counts for the action; whether it covers the subject is for the caller. */
export function reachCounts(kind: ReachKind, action: Action): boolean {
  const kinds: readonly ReachKind[] = ACTIONS[action].reach;
  return kinds.includes(kind);
}
