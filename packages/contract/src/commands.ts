import { z } from 'zod';
import { fileHash, id, instant } from './primitives.ts';

/** What binds a signature: the secret, typed again, and what the person says by signing. */
export const signatureInput = z.strictObject({
  secret: z.string().min(1).max(200),
  meaning: z.string().trim().min(1).max(200),
});

const shared = {
  /** UUIDv7 made by the client: the same id again gets the first answer again */
  eventId: id,
  v: z.literal(1),
  /** the joint, pack, permit, person … that this is about */
  subjectId: id,
  /** device time of the work, and how far the device's clock was off when last measured (server − device) */
  deviceTime: instant,
  clockOffset_ms: z.int().min(-31_536_000_000).max(31_536_000_000).default(0),
  device: z.string().max(120).nullable().default(null),
  /** persons who did the work, where it is not (only) the one who records it */
  performedBy: z.array(id).max(20).default([]),
  /** version of the joint or pack that the decision's maker saw */
  versionSeen: z.int().nonnegative().nullable().default(null),
  /** the work is already done: keep the fact and let someone entitled deal with the failed rules */
  alreadyDone: z.boolean().default(false),
  signature: signatureInput.nullable().default(null),
};

/** The envelope of a command; `payload` is the event's own schema. */
export const commandEnvelope = <T extends z.ZodType>(payload: T) =>
  z.strictObject({
    ...shared,
    makeId: id.nullable().default(null),
    /** photo of the paper that the work was written on before it was entered; facts only */
    paperForm: fileHash.nullable().default(null),
    payload,
  });

const batchRow = <T extends z.ZodType>(payload: T) =>
  z.strictObject({
    jointId: id,
    makeId: id,
    versionSeen: z.int().nonnegative().nullable().default(null),
    payload,
  });

/** One decision over a list of joints under one signature: one event whose rows hang under a Merkle root. */
export const batchEnvelope = <T extends z.ZodType>(payload: T) =>
  z.strictObject({
    ...shared,
    /** `all` = nothing is recorded unless every row passes; `each` = rows that fail are left out and named */
    mode: z.enum(['all', 'each']),
    rows: z.array(batchRow(payload)).min(1).max(20_000),
  });

export const failedRule = z.object({
  rule: z.string(),
  severity: z.enum(['flag', 'reason', 'stop']),
  joint: z.string().nullable(),
  message: z.string(),
  why: z.string(),
  remedy: z.string(),
  detail: z.string(),
});
export type FailedRuleAnswer = z.infer<typeof failedRule>;

export const commandAnswer = z.object({
  eventId: id,
  sequence: z.int(),
  recordedAt: instant,
  disposition: z.enum(['applied', 'needs-review']),
  /** failed rules that only flag, or, where the fact was kept for review, those that it failed */
  failed: z.array(failedRule),
  subjectId: id,
  stage: z.string().nullable(),
  version: z.int().nullable(),
});
export type CommandAnswer = z.infer<typeof commandAnswer>;

export const batchAnswer = z.object({
  eventId: id,
  sequence: z.int().nullable(),
  recordedAt: instant.nullable(),
  recorded: z.int(),
  refused: z.array(
    z.object({
      jointId: id,
      makeId: id,
      joint: z.string(),
      failed: z.array(failedRule),
    }),
  ),
  /** set where the list was long and became a job */
  jobId: id.nullable(),
});
export type BatchAnswer = z.infer<typeof batchAnswer>;

export const problem = z.object({
  type: z.string(),
  title: z.string(),
  status: z.int(),
  detail: z.string(),
  instance: z.string().optional(),
  errors: z.array(
    z.looseObject({
      path: z.string(),
      code: z.string(),
      message: z.string(),
      limit: z.unknown().optional(),
    }),
  ),
});
export type ProblemBody = z.infer<typeof problem>;
