import { z } from 'zod';
import { FACINGS, PART_KINDS, STANDARDS } from '../code-lists.ts';
import { asEntered, gasketFamily, line, nonNegative, number, positive, prose } from '../primitives.ts';

/**
 * Dimensions and allowables for the flange stresses of the code. What a flange of a standard leaves out comes from the
 * tables; a custom one gives all of them, the hub where it is integral.
 */
export const flangeStrength = z.strictObject({
  kind: z.enum(['integral', 'loose']),
  outsideDiameter_mm: positive.nullable(),
  insideDiameter_mm: positive.nullable(),
  boltCircle_mm: positive.nullable(),
  /** without raised face */
  thickness_mm: positive.nullable(),
  hub: z.strictObject({ length_mm: positive, smallThickness_mm: positive, largeThickness_mm: positive }).nullable(),
  allowableAmbient_MPa: positive,
  allowableOperating_MPa: positive,
  elasticModulusAmbient_MPa: positive,
  elasticModulusOperating_MPa: positive,
  source: prose,
});
export type FlangeStrength = z.infer<typeof flangeStrength>;

/** Highest assembly stress of the bolts that somebody else computed for this flange. */
export const flangeMaximum = z.strictObject({
  boltStress_MPa: positive,
  /** of one flange at that stress */
  rotation_deg: z.number().positive().max(5).nullable(),
  source: prose,
});
export type FlangeMaximum = z.infer<typeof flangeMaximum>;

/** How a flange is described: by a standard's keys, or by its own dimensions. */
export const flangeSpecification = z.strictObject({
  standard: z.enum(STANDARDS),
  size: z.string().max(16),
  rating: z.string().max(16),
  facing: z.enum(FACINGS),
  /** absent or null = not known, and not checked */
  strength: flangeStrength.nullable().optional(),
  maximum: flangeMaximum.nullable().optional(),
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
  /** of pass-partition ribs, added to the ring; 0 = it has none, absent or null = nobody has said */
  ribArea_mm2: nonNegative.nullable().optional(),
});
export type GasketSpecification = z.infer<typeof gasketSpecification>;

/** One part of what the bolts clamp, in order from the viewing side. */
export const clampedPart = z.strictObject({
  kind: z.enum(PART_KINDS),
  thickness_mm: positive.nullable(),
  note: line.nullable(),
});
export type ClampedPart = z.infer<typeof clampedPart>;

/** Pull and bending that the line puts on the joint in operation; 0 where there is none. */
export const externalLoad = z.strictObject({ axialForce_N: nonNegative, moment_Nm: nonNegative, source: prose });
export type ExternalLoad = z.infer<typeof externalLoad>;

const temperature = z.number().min(-273).max(900);
const temperaturePair = z.strictObject({ bolt_C: temperature, flange_C: temperature });

/** Bolts and flanges at different temperatures: going up, coming down, or both. */
export const jointTemperatures = z
  .strictObject({
    assembly_C: temperature,
    goingUp: temperaturePair.nullable(),
    comingDown: temperaturePair.nullable(),
    flangeExpansion_perK: z.number().min(1e-6).max(4e-5),
    source: prose,
    /** of the clamped parts; null = taken as rigid, which is on the safe side */
    stiffness: z.strictObject({ flanges_N_per_mm: positive, gaskets_N_per_mm: positive, source: prose }).nullable(),
  })
  .refine(({ goingUp, comingDown }) => goingUp !== null || comingDown !== null, {
    error: 'Give the temperatures of bolts and flanges going up, coming down, or both.',
  });
export type JointTemperatures = z.infer<typeof jointTemperatures>;

export const serviceSpecification = z.strictObject({
  medium: line.nullable(),
  pressure_MPa: nonNegative.nullable(),
  pressureAsEntered: asEntered.nullable(),
  temperature_C: number.nullable(),
  temperatureAsEntered: asEntered.nullable(),
  /** absent or null = nobody has said, and what needs it is not checked */
  testPressure_MPa: nonNegative.nullable().optional(),
  external: externalLoad.nullable().optional(),
  temperatures: jointTemperatures.nullable().optional(),
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
