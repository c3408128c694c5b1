import { z } from 'zod';
import {
  checkingLevel,
  criticality,
  day,
  fileHash,
  id,
  jointKind,
  line,
  makePurpose,
  proofWay,
  prose,
  workScope,
} from '../primitives.ts';
import { clampedPart, gasketSpecification, jointSpecification, jointWhereabouts } from './joint-specification.ts';

const packRole = z.strictObject({
  packId: id,
  role: z.enum(['inside', 'boundary', 'reinstated']),
});

export const makePlan = z.strictObject({
  makeId: id,
  number: z.int().min(1).max(99),
  purpose: makePurpose,
  workScope,
  /** null = the stack of the register */
  clampedParts: z.array(clampedPart).max(12).nullable(),
  /** null = the gasket of the register */
  gasket: gasketSpecification.nullable(),
  checkingLevel: checkingLevel.nullable(),
  proof: proofWay,
  plannedOn: day.nullable(),
  crewId: id.nullable(),
  packs: z.array(packRole).max(20),
});
export type MakePlan = z.infer<typeof makePlan>;

export const registerEvents = {
  // Version 2 of joint-listed, joint-specified and make-planned: loads, temperatures, flange strength, ribs.
  'joint-listed': z.strictObject({
    placeId: id,
    tag: line,
    kind: jointKind,
    criticality,
    whereabouts: jointWhereabouts,
    specification: jointSpecification,
    makes: z.array(makePlan).max(6),
    remark: prose.nullable(),
  }),
  'joint-specified': z.strictObject({
    tag: line.optional(),
    kind: jointKind.optional(),
    criticality: criticality.optional(),
    whereabouts: jointWhereabouts.partial().optional(),
    specification: jointSpecification.optional(),
    remark: prose.nullable().optional(),
    reason: prose.nullable(),
  }),
  'joint-found': z.strictObject({
    placeId: id,
    temporaryNumber: line,
    nearest: line,
    areaId: id.nullable(),
    size: line.nullable(),
    rating: line.nullable(),
    photo: fileHash.nullable(),
    makeId: id,
    remark: prose.nullable(),
  }),
  'joint-merged': z.strictObject({ intoJointId: id, reason: prose }),
  'joint-voided': z.strictObject({
    why: z.enum(['duplicate', 'not-found', 'welded-up', 'not-opened']),
    reason: prose,
  }),
  'make-planned': makePlan,
  'make-assigned': z.strictObject({
    crewId: id.nullable(),
    plannedOn: day.nullable(),
    checkingLevel: checkingLevel.nullable().optional(),
  }),
  'make-cancelled': z.strictObject({ reason: prose }),
} as const;

export const itemEvents = {
  'item-registered': z.strictObject({
    itemId: id,
    tag: line,
    kind: z.enum(['valve', 'relief-valve', 'control-valve', 'spool', 'bundle', 'cover', 'blind']),
    jointIds: z.array(id).max(20),
    description: line.nullable(),
  }),
  'item-moved': z.strictObject({
    whereabouts: z.enum(['in-line', 'at-the-joint', 'workshop', 'store', 'scrapped']),
    remark: prose.nullable(),
  }),
  'blind-planned': z.strictObject({
    blindId: id,
    number: line,
    type: z.enum(['spade', 'spectacle', 'blind-flange', 'test-blind']),
    rating: line.nullable(),
    thickness_mm: z.number().positive().nullable(),
    purpose: z.enum(['isolation', 'test']),
    jointId: id.nullable(),
    packId: id.nullable(),
    owner: line.nullable(),
    outBy: day.nullable(),
  }),
  'blind-in': z.strictObject({
    tagHung: z.boolean(),
    photo: fileHash.nullable(),
    remark: prose.nullable(),
  }),
  'blind-out': z.strictObject({
    photo: fileHash.nullable(),
    remark: prose.nullable(),
  }),
  'spectacle-turned': z.strictObject({
    position: z.enum(['open', 'closed']),
    photo: fileHash.nullable(),
  }),
} as const;
