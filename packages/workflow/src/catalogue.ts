import type { EventType, Payload } from '@seatwell/contract';
import type { Action } from './roles.ts';

export type EventKind = 'fact' | 'decision';

export type Subject =
  | 'shutdown'
  | 'settings'
  | 'area'
  | 'system'
  | 'crew'
  | 'permit'
  | 'talk'
  | 'punch'
  | 'joint'
  | 'make'
  | 'pack'
  | 'item'
  | 'blind'
  | 'event'
  | 'site'
  | 'person'
  | 'account'
  | 'grant'
  | 'qualification'
  | 'tool'
  | 'calibration'
  | 'procedure'
  | 'target-table'
  | 'engineering-data'
  | 'key';

export interface CatalogueEntry {
  readonly stream: 'shutdown' | 'site';
  /** what it is when the payload does not decide otherwise: `eventKind` has the last word */
  readonly kind: EventKind;
  readonly signed: boolean;
  readonly offline: boolean;
  readonly subject: Subject;
  readonly action: Action;
  /** may be a row of a batch: import, bulk targets, signed list */
  readonly batchable: boolean;
  /** version of the payload that this release writes */
  readonly currentVersion: number;
  readonly effect: string;
}

type Options = { signed?: true; offline?: true; batchable?: true; version?: number };

const entry =
  (stream: CatalogueEntry['stream'], kind: EventKind) =>
  (subject: Subject, action: Action, effect: string, options: Options = {}): CatalogueEntry => ({
    stream,
    kind,
    signed: options.signed ?? false,
    offline: options.offline ?? false,
    subject,
    action,
    batchable: options.batchable ?? false,
    currentVersion: options.version ?? 1,
    effect,
  });

const fact = entry('shutdown', 'fact');
const decision = entry('shutdown', 'decision');
const siteDecision = entry('site', 'decision');

const signed = { signed: true } as const;
const offline = { offline: true } as const;
const batch = { batchable: true } as const;
const signedList = { signed: true, batchable: true } as const;

/** What every event is: the one place that says so. Order as in the design's catalogue. */
export const CATALOGUE = {
  'shutdown-opened': decision('shutdown', 'open-shutdown', 'the shutdown exists'),
  'settings-changed': decision('settings', 'change-settings', 'what the rules read'),
  'area-listed': decision('area', 'plan-shutdown', 'the area exists'),
  'system-listed': decision('system', 'plan-shutdown', 'the system exists'),
  'crew-listed': decision('crew', 'plan-shutdown', 'the crew and its people'),
  'permit-recorded': fact('permit', 'record-permit', 'the permit covers its joints', offline),
  'permit-withdrawn': fact('permit', 'record-permit', 'the permit covers nothing', offline),
  'talk-held': fact('talk', 'hold-talk', 'attendance on a procedure revision', offline),
  'punch-raised': fact('punch', 'raise-punch', 'an open item of its category', offline),
  'punch-closed': decision('punch', 'close-punch', 'the item is closed', signed),
  'joint-listed': decision('joint', 'list-joints', 'the joint is in the register', { ...batch, version: 2 }),
  'joint-specified': decision('joint', 'list-joints', 'what the register says changes', { ...batch, version: 2 }),
  'joint-found': fact('joint', 'find-joint', 'a joint with a temporary number', offline),
  'joint-merged': decision('joint', 'void-joint', 'the found joint is one of the register'),
  'joint-voided': decision('joint', 'void-joint', 'no work on this joint'),
  'make-planned': decision('joint', 'plan-makes', 'one more closing of the joint', { ...batch, version: 2 }),
  'make-assigned': decision('make', 'plan-makes', 'crew, day and level of checking', batch),
  'make-cancelled': decision('make', 'plan-makes', 'this closing is not made', batch),
  'item-registered': fact('item', 'record-items', 'the item and its joints', offline),
  'item-moved': fact('item', 'record-items', 'where the item is', offline),
  'blind-planned': decision('blind', 'plan-blinds', 'a blind that goes in and comes out', batch),
  'blind-in': fact('blind', 'move-blinds', 'one more blind in', offline),
  'blind-out': fact('blind', 'move-blinds', 'one blind fewer in', offline),
  'spectacle-turned': fact('blind', 'move-blinds', 'open or closed', offline),
  'procedure-assigned': decision('make', 'assign-procedure', 'the procedure of the make', batch),
  'target-approved': decision('make', 'approve-target', '→ engineered', { ...signedList, version: 3 }),
  'hold-placed': fact('joint', 'place-hold', 'on hold', offline),
  'hold-released': decision('joint', 'release-hold', 'no longer on hold', signed),
  'break-released': decision('make', 'release-break', '→ released', signedList),
  opened: fact('make', 'open-joint', '→ open', offline),
  'faces-inspected': fact('make', 'inspect-faces', '→ faces accepted, or stays open', offline),
  'nipped-up': fact('make', 'nip-up', '→ nipped up', offline),
  'pass-recorded': fact('make', 'tighten', '→ part tight', offline),
  'final-round-recorded': fact('make', 'tighten', '→ tight', offline),
  'relaxation-pass-recorded': fact('make', 'tighten', 'relaxation pass done', offline),
  'stud-replaced': fact('make', 'tighten', '→ part tight, neighbours due', offline),
  loosened: fact('make', 'loosen', '→ part tight, or nipped up to be retightened', offline),
  'leak-found': fact('make', 'report-leak', '→ tight, leaking', offline),
  checked: decision('make', 'check-quality', '→ checked, or tight and rejected', {
    signed: true,
    offline: true,
    batchable: true,
  }),
  witnessed: decision('make', 'witness', 'the point is witnessed', signedList),
  'witness-waived': decision('make', 'witness', 'the point is waived', signedList),
  'deviation-accepted': decision('make', 'accept-deviation', 'one stated rule may pass', signed),
  proven: decision('make', 'prove', '→ proven', signedList),
  'hand-over-offered': decision('make', 'offer-hand-over', 'the coordinator offers it to operations', signedList),
  'handed-over': decision('make', 'hand-over', '→ handed over', signedList),
  'taken-back': decision('make', 'take-back', 'back from hand-over', signed),
  'pack-planned': decision('pack', 'plan-packs', 'the pack exists', batch),
  'pack-released': decision('pack', 'release-pack', 'pressure may be put on', signed),
  'test-reading': fact('pack', 'record-test', 'pressure, time and a result per joint', offline),
  corrected: fact('event', 'correct', 'replaces the named fact', offline),
  revoked: decision('event', 'revoke', 'the named decision no longer counts', signed),
  'review-settled': decision('event', 'settle-review', 'the named fact counts, or does not', signed),
  'site-settings-changed': siteDecision('site', 'manage-settings', 'name, zone and units'),
  'person-registered': siteDecision('person', 'manage-people', 'the person exists', batch),
  'person-erased': siteDecision('person', 'manage-people', 'the name is removed'),
  'account-opened': siteDecision('account', 'manage-accounts', 'the person may sign in'),
  'account-closed': siteDecision('account', 'manage-accounts', 'the person may not sign in'),
  'role-granted': siteDecision('grant', 'manage-accounts', 'a role with its reach'),
  'role-ended': siteDecision('grant', 'manage-accounts', 'the role ends'),
  'deputy-named': siteDecision('account', 'manage-accounts', 'a deputy with dates'),
  'qualification-recorded': siteDecision('qualification', 'record-qualifications', 'may do the work', batch),
  'qualification-withdrawn': siteDecision('qualification', 'record-qualifications', 'may no longer'),
  'tool-registered': siteDecision('tool', 'manage-tools', 'the tool exists', { ...batch, version: 2 }),
  'calibration-recorded': siteDecision('tool', 'manage-tools', 'in calibration until a day', batch),
  'calibration-cleared': siteDecision('calibration', 'manage-tools', 'a provisional tool is confirmed'),
  'tool-failed': siteDecision('tool', 'manage-tools', 'what it tightened is to be looked at', signed),
  'procedure-drafted': siteDecision('procedure', 'draft-procedure', 'a revision to be approved', { version: 3 }),
  'procedure-approved': siteDecision('procedure', 'approve-procedure', 'the revision may be used', signed),
  'procedure-superseded': siteDecision('procedure', 'approve-procedure', 'no new use'),
  'target-table-approved': siteDecision('target-table', 'approve-target', 'targets of a family', signed),
  'gasket-data-entered': siteDecision('engineering-data', 'enter-engineering-data', 'limits with source', {
    version: 2,
  }),
  'lubricant-entered': siteDecision('engineering-data', 'enter-engineering-data', 'nut factor with source'),
  'maker-torque-entered': siteDecision('engineering-data', 'enter-engineering-data', 'torque with source'),
  'key-enrolled': siteDecision('key', 'manage-own-keys', 'the device signs for the person'),
  'key-revoked': siteDecision('key', 'manage-own-keys', 'the device no longer signs'),
} as const satisfies Record<EventType, CatalogueEntry>;

const checkingLevelOf = (payload: unknown): string | undefined =>
  (payload as Partial<Payload<'checked'>> | null)?.level;

/** Fact or decision. A check by the crew itself or by its chargehand is a fact that a device may sign offline. */
export function eventKind(type: EventType, payload: unknown): EventKind {
  if (type === 'checked') {
    const level = checkingLevelOf(payload);
    return level === 'self' || level === 'chargehand' ? 'fact' : 'decision';
  }
  return CATALOGUE[type].kind;
}

/** Whether the person signs: with the re-entered secret for decisions, with the enrolled key for signed facts. */
export function needsSignature(type: EventType, _payload: unknown): boolean {
  return CATALOGUE[type].signed;
}

/** The action of the role table that recording this event takes. */
export function actionFor(type: EventType, payload: unknown): Action {
  if (type === 'checked') {
    const level = checkingLevelOf(payload);
    if (level === 'self') return 'check-own-work';
    if (level === 'chargehand') return 'check-as-chargehand';
  }
  return CATALOGUE[type].action;
}

export function isEventType(type: string): type is EventType {
  return Object.hasOwn(CATALOGUE, type);
}
