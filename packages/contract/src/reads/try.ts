import { z } from 'zod';
import { calcTargetResponse } from '../calc/target.ts';
import { failedRule } from '../commands.ts';
import { id, instant, stage } from '../primitives.ts';
import { targetAnswer } from './joint-page.ts';

/** `POST /joints/:jointId/makes/:makeId/target-preview`, body = payload of `target-approved`: nothing is recorded. */
export const targetPreview = z.object({
  /** what approval would keep */
  target: targetAnswer,
  /** the whole calculation with its working; null for a maker's torque */
  answer: calcTargetResponse.nullable(),
});
export type TargetPreview = z.infer<typeof targetPreview>;

/** Body of `POST /joints/:jointId/makes/:makeId/try/:type`: the command without id and signature. */
export const tryInput = z.strictObject({
  performedBy: z.array(id).max(20).default([]),
  versionSeen: z.int().nonnegative().nullable().default(null),
  /** when the work was done; null = now */
  at: instant.nullable().default(null),
  payload: z.record(z.string(), z.unknown()),
});
export type TryInput = z.input<typeof tryInput>;

/** What recording it would answer now. Nothing is recorded, and what is missing is only the signature. */
export const tryAnswer = z.object({
  wouldRecord: z.boolean(),
  /** rules that stop it or ask for a reason; all of them at once */
  failed: z.array(failedRule),
  /** rules that would only flag it */
  flags: z.array(failedRule),
  /** refusals that are no rules: stale version, missing role, calculation; null = none */
  problem: z.object({ code: z.string(), message: z.string() }).nullable(),
  /** stage that the make would reach */
  stage: stage.nullable(),
});
export type TryAnswer = z.infer<typeof tryAnswer>;
