import { z } from 'zod';
import { shutdownSettings } from '../events/index.ts';
import { itemEvents } from '../events/register-events.ts';
import { day, id, instant, stage, tighteningMethod } from '../primitives.ts';
import { allowedAction, areaRef, crewRef, eventType, jointRef, packRef, personRef, systemRef } from './common.ts';
import { shiftAnswer } from './today.ts';

/** `GET /choices`: what filters and forms offer. */
export const choicesAnswer = z.object({
  areas: z.array(areaRef),
  systems: z.array(systemRef.extend({ areaId: id.nullable() })),
  crews: z.array(crewRef.extend({ company: z.string(), shift: z.string().nullable(), persons: z.array(personRef) })),
  packs: z.array(packRef.extend({ areaId: id.nullable(), systemId: id.nullable() })),
  /** keys that the register's joints have, most frequent first */
  sizes: z.array(z.string()),
  ratings: z.array(z.string()),
  gasketFamilies: z.array(z.string()),
  actions: z.array(allowedAction),
});
export type ChoicesAnswer = z.infer<typeof choicesAnswer>;

/** `GET /crews` */
export const crewsAnswer = z.object({
  rows: z.array(
    crewRef.extend({
      company: z.string(),
      shift: z.string().nullable(),
      persons: z.array(personRef.extend({ qualifiedFor: z.array(z.string()) })),
      joints: z.int(),
      methods: z.array(tighteningMethod),
    }),
  ),
  actions: z.array(allowedAction),
});
export type CrewsAnswer = z.infer<typeof crewsAnswer>;

/** `GET /talks` */
export const talksAnswer = z.object({
  rows: z.array(
    z.object({
      talkId: id,
      procedureId: id,
      code: z.string(),
      title: z.string(),
      revision: z.int(),
      crew: crewRef.nullable(),
      heldBy: personRef,
      heldAt: instant,
      attendees: z.array(personRef),
    }),
  ),
  actions: z.array(allowedAction),
});
export type TalksAnswer = z.infer<typeof talksAnswer>;

/** `GET /blinds` */
export const blindsAnswer = z.object({
  rows: z.array(
    z.object({
      blindId: id,
      number: z.string(),
      type: z.enum(['spade', 'spectacle', 'blind-flange', 'test-blind']),
      purpose: z.enum(['isolation', 'test']),
      plan: itemEvents['blind-planned'],
      joint: jointRef.nullable(),
      pack: packRef.nullable(),
      area: areaRef.nullable(),
      outBy: day.nullable(),
      inAt: instant.nullable(),
      outAt: instant.nullable(),
      position: z.string().nullable(),
      state: z.enum(['planned', 'in', 'out']),
      overdue: z.boolean(),
      actions: z.array(allowedAction),
    }),
  ),
  counts: z.object({ planned: z.int(), in: z.int(), out: z.int(), overdue: z.int() }),
  actions: z.array(allowedAction),
});
export type BlindsAnswer = z.infer<typeof blindsAnswer>;

/** `GET /items` */
export const itemsAnswer = z.object({
  rows: z.array(
    z.object({
      itemId: id,
      tag: z.string(),
      kind: z.string(),
      description: z.string().nullable(),
      whereabouts: z.string(),
      joints: z.array(jointRef),
    }),
  ),
  actions: z.array(allowedAction),
});
export type ItemsAnswer = z.infer<typeof itemsAnswer>;

/** `GET /reviews`: facts that were kept although rules failed, and that nobody has settled. */
export const reviewsAnswer = z.object({
  rows: z.array(
    z.object({
      eventId: id,
      type: eventType,
      joint: jointRef.nullable(),
      pack: packRef.nullable(),
      makeId: id.nullable(),
      area: areaRef.nullable(),
      stage: stage.nullable(),
      workTime: instant,
      recordedAt: instant,
      recordedBy: personRef.nullable(),
      performedBy: z.array(personRef),
      payload: z.unknown(),
      /** the rules that failed, with their sentences where the rule is known */
      rules: z.array(z.object({ code: z.string(), sentence: z.string(), remedy: z.string() })),
      /** an earlier fact of the same make that must be settled first */
      behind: id.nullable(),
      version: z.int().nullable(),
      actions: z.array(allowedAction),
    }),
  ),
});
export type ReviewsAnswer = z.infer<typeof reviewsAnswer>;

/** `GET /shutdown` */
export const shutdownAnswer = z.object({
  shutdownId: id,
  name: z.string(),
  timeZone: z.string(),
  startsOn: day,
  endsOn: day,
  units: z.enum(['SI', 'US']),
  areaBasis: z.enum(['tensile', 'root']),
  shifts: z.array(z.object({ name: z.string(), starts: z.string(), ends: z.string() })),
  settings: shutdownSettings,
  now: instant,
  shift: shiftAnswer,
  actions: z.array(allowedAction),
});
export type ShutdownAnswer = z.infer<typeof shutdownAnswer>;

/** `GET /record/head`: the length of the record and the root of its Merkle tree, signed where the server has a key. */
export const recordHead = z.object({
  sequence: z.int(),
  /** hex */
  root: z.string(),
  changedAt: instant,
  /** the head as a signed note; null where heads are not signed */
  signed: z.string().nullable(),
  /** SHA-256 of the public key that signed it, pairs of hexadecimal digits with colons */
  fingerprint: z.string().nullable(),
  /** why it is not signed, and the remedy */
  unsigned: z.string().nullable(),
});
export type RecordHead = z.infer<typeof recordHead>;

/** `GET /record-keys`: the public keys that signed heads of the record, in the order of their time. */
export const recordKeys = z.object({
  /** fingerprint of the key that signs now; null: heads are not signed at present */
  signs: z.string().nullable(),
  keys: z.array(
    z.object({
      /** SHA-256 of the public key in DER, pairs of hexadecimal digits with colons */
      fingerprint: z.string(),
      /** PEM */
      publicKey: z.string(),
      since: instant,
    }),
  ),
});
export type RecordKeys = z.infer<typeof recordKeys>;
