import { z } from 'zod';
import { FACINGS, PART_KINDS, STANDARDS } from '../code-lists.ts';
import { asEntered, gasketFamily, line, nonNegative, number, positive } from '../primitives.ts';

/** How a flange is described: by a standard's keys, or by its own dimensions. */
export const flangeSpecification = z.strictObject({
  standard: z.enum(STANDARDS),
  size: z.string().max(16),
  rating: z.string().max(16),
  facing: z.enum(FACINGS),
});
export type FlangeSpecification = z.infer<typeof flangeSpecification>;

export const boltingSpecification = z.strictObject({
  count: z.int().min(3).max(400),
  thread: line,
  grade: line.nullable(),
  nutGrade: line.nullable(),
  length_mm: positive.nullable(),
});
export type BoltingSpecification = z.infer<typeof boltingSpecification>;

export const gasketSpecification = z.strictObject({
  family: gasketFamily,
  detail: line.nullable(),
  count: z.int().min(0).max(4),
  contactInside_mm: positive.nullable(),
  contactOutside_mm: positive.nullable(),
  thickness_mm: positive.nullable(),
});
export type GasketSpecification = z.infer<typeof gasketSpecification>;

/** One part of what the bolts clamp, in order from the viewing side. */
export const clampedPart = z.strictObject({
  kind: z.enum(PART_KINDS),
  thickness_mm: positive.nullable(),
  note: line.nullable(),
});
export type ClampedPart = z.infer<typeof clampedPart>;

export const serviceSpecification = z.strictObject({
  medium: line.nullable(),
  pressure_MPa: nonNegative.nullable(),
  pressureAsEntered: asEntered.nullable(),
  temperature_C: number.nullable(),
  temperatureAsEntered: asEntered.nullable(),
});

/** What the register says of a joint: one set of bolts. */
export const jointSpecification = z.strictObject({
  flange: flangeSpecification,
  bolting: boltingSpecification.nullable(),
  gasket: gasketSpecification,
  clampedParts: z.array(clampedPart).max(12),
  service: serviceSpecification,
  hotExposed: z.boolean(),
});
export type JointSpecification = z.infer<typeof jointSpecification>;

/** Where the joint is, and from where it is looked at: without the last two "clockwise" means nothing. */
export const jointWhereabouts = z.strictObject({
  areaId: z.uuid().nullable(),
  systemId: z.uuid().nullable(),
  line: line.nullable(),
  location: line.nullable(),
  drawing: line.nullable(),
  item: line.nullable(),
  viewedFrom: line.nullable(),
  bolt1At: line.nullable(),
  /** the joint from its viewing side; printed on its sheet */
  photo: z
    .string()
    .regex(/^[0-9a-f]{64}$/)
    .nullable()
    .optional(),
});
export type JointWhereabouts = z.infer<typeof jointWhereabouts>;
