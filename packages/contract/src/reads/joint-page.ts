import { z } from 'zod';
import { gasketSpecification, procedureContent } from '../events/index.ts';
import {
  checkingLevel,
  criticality,
  fileHash,
  id,
  instant,
  makePurpose,
  proofWay,
  punchCategory,
  stage,
  workScope,
} from '../primitives.ts';
import {
  allowedAction,
  crewRef,
  eventType,
  flagAnswer,
  jointRef,
  packRef,
  personRef,
  restartAnswer,
  sentenceData,
  waitsForAnswer,
} from './common.ts';

/** The folded joint as packages/workflow's `JointState` has it; cast it to that type to use its functions. */
export const jointStateAnswer = z.looseObject({
  jointId: id,
  tag: z.string(),
  criticality,
  version: z.int(),
  makes: z.array(z.looseObject({ makeId: id, number: z.int(), stage })),
});

export const targetAnswer = z.looseObject({
  basis: z.enum(['calculated', 'target-table', 'makers-torque']),
  insideWindow: z.boolean(),
  shortfallReason: z.string().nullable(),
  boltStress_MPa: z.number().nullable(),
  area: z.enum(['tensile', 'root']).nullable(),
  boltLoad_N: z.number().nullable(),
  governedBy: z.string().nullable(),
  torque_Nm: z.number().nullable(),
  passes: z.array(
    z.object({
      percent: z.number(),
      torque_Nm: z.number().nullable(),
      pressure_MPa: z.number().nullable(),
      elongation_mm: z.number().optional(),
    }),
  ),
  lubricant: z.string(),
  sources: z.array(z.string()),
});

export const assignedProcedure = z.object({
  procedureId: id,
  revision: z.int(),
  code: z.string(),
  title: z.string(),
  approvedAt: instant.nullable(),
  supersededAt: instant.nullable(),
  content: procedureContent,
  lubricant: z.object({ name: z.string(), nutFactor: z.number(), source: z.string() }).nullable(),
});

export const makeAnswer = z.object({
  makeId: id,
  number: z.int(),
  purpose: makePurpose,
  workScope,
  proof: proofWay,
  stage,
  cancelled: z.boolean(),
  /** history: a later make has begun */
  overtaken: z.boolean(),
  flags: z.array(flagAnswer),
  waitsFor: waitsForAnswer,
  facesToInspect: z.int(),
  gasket: gasketSpecification,
  /** null where it is not a make to be tightened now */
  restartFrom: restartAnswer.nullable(),
  checkingLevel,
  /** what the check must be at least now (sample drawn, lot rejected) */
  checkingLevelNow: checkingLevel,
  /** joints of the same lot with a rejected check */
  lotRejections: z.array(z.string()),
  crew: crewRef.nullable(),
  crewPersons: z.array(personRef),
  packs: z.array(packRef.extend({ role: z.enum(['inside', 'boundary', 'reinstated']), released: z.boolean() })),
  procedure: assignedProcedure.nullable(),
  target: targetAnswer.nullable(),
  actions: z.array(allowedAction),
});
export type MakeAnswer = z.infer<typeof makeAnswer>;

/** One entry of the history. Corrections and what they name both stay. */
export const historyEntry = z.object({
  eventId: id,
  type: eventType,
  sequence: z.int(),
  makeId: id.nullable(),
  workTime: instant,
  recordedAt: instant,
  recordedBy: personRef.nullable(),
  performedBy: z.array(personRef),
  signed: z
    .object({ person: personRef, role: z.string(), meaning: z.string(), signedAt: instant, contentHash: z.string() })
    .nullable(),
  /** failed rules of a fact that was kept; empty = applied */
  reviewCodes: z.array(z.string()),
  /** in review and nobody has settled it */
  waitsForReview: z.boolean(),
  /** the correction, revocation or settlement that names this event */
  amendedBy: z.array(z.object({ eventId: id, type: eventType })),
  /** the event that this one names */
  amends: id.nullable(),
  payload: z.unknown(),
  /** rules that only flagged, accepted with it */
  flags: z.array(z.string()),
  /** photo of the paper form that it was entered from */
  paperForm: fileHash.nullable(),
  /** the few values that a sentence about it needs */
  data: sentenceData,
});
export type HistoryEntry = z.infer<typeof historyEntry>;

export const punchRow = z.object({
  punchId: id,
  category: punchCategory,
  text: z.string(),
  joint: jointRef.nullable(),
  pack: packRef.nullable(),
  system: z.object({ systemId: id, code: z.string() }).nullable(),
  owner: z.string().nullable(),
  raisedAt: instant,
  raisedBy: personRef.nullable(),
  closedAt: instant.nullable(),
  closedHow: z.string().nullable(),
  actions: z.array(allowedAction),
});
export type PunchRow = z.infer<typeof punchRow>;

export const permitRow = z.object({
  permitId: id,
  number: z.string(),
  isolationReference: z.string().nullable(),
  validFrom: instant,
  validUntil: instant,
  withdrawnAt: instant.nullable(),
  /** valid now and not withdrawn */
  inForce: z.boolean(),
  joints: z.array(jointRef),
  actions: z.array(allowedAction),
});
export type PermitRow = z.infer<typeof permitRow>;

/** `GET /joints/:jointId` and `GET /joints/by-tag/:tag` */
export const jointPage = z.object({
  joint: jointStateAnswer,
  /** the server's clock: what is due now is so at this instant */
  now: instant,
  area: z.object({ areaId: id, code: z.string(), name: z.string() }).nullable(),
  system: z.object({ systemId: id, code: z.string(), name: z.string() }).nullable(),
  shownMakeId: id.nullable(),
  /** flags of the joint as a whole (found, voided, on hold) are on each make */
  makes: z.array(makeAnswer),
  /** about the joint: specify, plan a make, hold, void … */
  actions: z.array(allowedAction),
  history: z.array(historyEntry),
  punchItems: z.array(punchRow),
  permits: z.array(permitRow),
  /** what the joint holds, and where it is */
  items: z.array(z.object({ itemId: id, tag: z.string(), kind: z.string(), whereabouts: z.string() })),
  /** everybody that state and history name; null = name erased */
  names: z.record(z.string(), z.string().nullable()),
  toolTags: z.record(z.string(), z.string()),
});
export type JointPage = z.infer<typeof jointPage>;
