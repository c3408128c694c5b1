import { z } from 'zod';
import {
  CHECKING_LEVELS,
  CRITICALITIES,
  GASKET_FAMILIES_KNOWN,
  JOINT_KINDS,
  MAKE_PURPOSES,
  PROOF_WAYS,
  PUNCH_CATEGORIES,
  QUALIFIED_FOR,
  ROLES,
  SEVERITIES,
  STAGES,
  TIGHTENING_METHODS,
  WORK_SCOPES,
} from './code-lists.ts';

/** Ids are UUIDs; those of events are UUIDv7 made by the client, so that a repeat is recognised. */
export const id = z.uuid();
/** No plant has days outside of these years; what a broken clock or a slip of the hand makes of a year is refused. */
const ofOurTimes = (text: string): boolean => text >= '1900' && text < '2200';
const OF_OUR_TIMES = { error: 'Give a year from 1900 to 2199.' };
/** A moment: ISO 8601 with offset or Z. */
export const instant = z.iso.datetime({ offset: true }).refine(ofOurTimes, OF_OUR_TIMES);
/** A calendar day in the site's zone. */
export const day = z.iso.date().refine(ofOurTimes, OF_OUR_TIMES);
/** One line of text that somebody typed. */
export const line = z.string().trim().min(1).max(200);
/** A reason or remark that somebody typed; printed where it is shown. */
export const prose = z.string().trim().min(1).max(2000);
/** SHA-256 of a stored file, lower-case hex. */
export const fileHash = z.string().regex(/^[0-9a-f]{64}$/);
/** A finite number; zod refuses NaN and infinity by itself. */
export const number = z.number();
export const positive = z.number().positive().max(1e12);
export const nonNegative = z.number().nonnegative().max(1e12);

/** What was read or typed, in the unit that the screen showed, kept beside the SI value. */
export const asEntered = z.strictObject({
  value: number,
  unit: z.string().min(1).max(16),
});

export const criticality = z.enum(CRITICALITIES);
export type Criticality = z.infer<typeof criticality>;

export const role = z.enum(ROLES);
export type Role = z.infer<typeof role>;

export const jointKind = z.enum(JOINT_KINDS);
export type JointKind = z.infer<typeof jointKind>;

export const gasketFamily = z.enum(GASKET_FAMILIES_KNOWN);
export type GasketFamilyCode = z.infer<typeof gasketFamily>;

export const stage = z.enum(STAGES);
export type Stage = z.infer<typeof stage>;

export const makePurpose = z.enum(MAKE_PURPOSES);
export type MakePurpose = z.infer<typeof makePurpose>;

export const workScope = z.enum(WORK_SCOPES);
export type WorkScope = z.infer<typeof workScope>;

export const checkingLevel = z.enum(CHECKING_LEVELS);
export type CheckingLevel = z.infer<typeof checkingLevel>;

export const proofWay = z.enum(PROOF_WAYS);
export type ProofWay = z.infer<typeof proofWay>;

export const tighteningMethod = z.enum(TIGHTENING_METHODS);
export type TighteningMethod = z.infer<typeof tighteningMethod>;

/** What a qualification lets a person do. */
export const qualifiedFor = z.enum(QUALIFIED_FOR);
export type QualifiedFor = z.infer<typeof qualifiedFor>;

export const severity = z.enum(SEVERITIES);
export type Severity = z.infer<typeof severity>;

export const punchCategory = z.enum(PUNCH_CATEGORIES);
export type PunchCategory = z.infer<typeof punchCategory>;
