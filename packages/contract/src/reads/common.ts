import { z } from 'zod';
import { STAGES } from '../code-lists.ts';
import { type EventType, shutdownPayloads, sitePayloads } from '../events/index.ts';
import { id, instant, role } from '../primitives.ts';

const EVENT_TYPES = [...Object.keys(shutdownPayloads), ...Object.keys(sitePayloads)] as [EventType, ...EventType[]];
export const eventType = z.enum(EVENT_TYPES);

/** What the caller may record here. Where it is not allowed, the reason says why, and buttons show it. */
export const allowedAction = z.object({
  type: eventType,
  allowed: z.boolean(),
  /** `not-allowed` (roles), an order rule's code such as `passes.nipped-up-first`, or what else stands against it */
  reason: z.object({ code: z.string(), message: z.string() }).nullable(),
  /** the secret is typed again */
  signed: z.boolean(),
  /** decisions need the version seen */
  kind: z.enum(['fact', 'decision']),
});
export type AllowedAction = z.infer<typeof allowedAction>;

/** A person by name; null once the name was erased. */
export const personRef = z.object({ personId: id, name: z.string().nullable() });
export type PersonRef = z.infer<typeof personRef>;

export const areaRef = z.object({ areaId: id, code: z.string(), name: z.string() });
export const systemRef = z.object({ systemId: id, code: z.string(), name: z.string() });
export const crewRef = z.object({ crewId: id, code: z.string() });
export const packRef = z.object({ packId: id, number: z.string() });
export const jointRef = z.object({ jointId: id, tag: z.string() });
export type AreaRef = z.infer<typeof areaRef>;
export type SystemRef = z.infer<typeof systemRef>;
export type CrewRef = z.infer<typeof crewRef>;
export type PackRef = z.infer<typeof packRef>;
export type JointRef = z.infer<typeof jointRef>;

/** Values of a sentence whose words the reader's language has. */
export const sentenceData = z.record(z.string(), z.union([z.string(), z.number(), z.boolean(), z.null()]));
export type SentenceData = z.infer<typeof sentenceData>;

/** What a make waits for: code of packages/workflow's `WaitCode`, who moves it on, and values. */
export const waitsForAnswer = z.object({ code: z.string(), by: role.nullable(), data: sentenceData });
export type WaitsForAnswer = z.infer<typeof waitsForAnswer>;

/** A flag beside the stage: code of packages/workflow's `FlagCode` (and `found`), and what it is about. */
export const flagAnswer = z.object({ code: z.string(), detail: z.string() });

export const punchCounts = z.object({ A: z.int(), B: z.int(), C: z.int() });

/** Number of joints at each stage; every stage is there, zeros included. */
export const countsByStage = z.object(
  Object.fromEntries(STAGES.map((each) => [each, z.int()])) as Record<(typeof STAGES)[number], z.ZodInt>,
);
export type CountsByStage = z.infer<typeof countsByStage>;

/** Where tightening begins or goes on. */
export const restartAnswer = z.object({
  /** passCount + 1 = the final round */
  pass: z.int(),
  passCount: z.int(),
  finalRound: z.boolean(),
  /** the pass was begun and left: it is repeated from its first bolt */
  repeats: z.boolean(),
  leftAt: instant.nullable(),
  leftBy: z.array(personRef),
  lastBolt: z.int().nullable(),
  boltsDone: z.int(),
  why: z.string().nullable(),
  /** left in an earlier shift: gaps are checked before the restart */
  leftOvernight: z.boolean(),
});
export type RestartAnswer = z.infer<typeof restartAnswer>;

/** Several values of a query: repeated (`stage=open&stage=tight`) or with commas (`stage=open,tight`). */
export const several = <T extends z.ZodType>(item: T) =>
  z.preprocess(
    (value) => (typeof value === 'string' ? value.split(',').filter((part) => part !== '') : value),
    z.array(item).max(50),
  );

export const yes = z.preprocess((value) => (value === 'true' ? true : value === 'false' ? false : value), z.boolean());
