import { z } from 'zod';
import { COVERAGES, PATTERNS, TOOL_KINDS } from '../code-lists.ts';
import {
  asEntered,
  day,
  fileHash,
  gasketFamily,
  id,
  jointKind,
  line,
  positive,
  prose,
  qualifiedFor,
  role,
  tighteningMethod,
  workScope,
} from '../primitives.ts';

export const reach = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('site') }),
  z.strictObject({ kind: z.literal('shutdown'), id }),
  z.strictObject({ kind: z.literal('area'), id }),
  z.strictObject({ kind: z.literal('pack'), id }),
  z.strictObject({ kind: z.literal('crew'), id }),
  z.strictObject({ kind: z.literal('own-assignments') }),
]);
export type Reach = z.infer<typeof reach>;

export const coverage = z.literal(COVERAGES);
export type Coverage = z.infer<typeof coverage>;

/** What the procedure says of the bolts: the same for every joint that it is assigned to. */
export const procedureBolts = z.strictObject({
  /** as fitted; a make whose bolting was inspected goes by that */
  condition: z.enum(['new', 'reused']),
  /** null = bare */
  coating: z
    .strictObject({
      name: line,
      /** of its maker; null = the common limit of the calculation's table, where it has one */
      maximum_C: z.number().min(-273).max(900).nullable(),
      source: prose.nullable(),
    })
    .nullable(),
  /** hardened washers under the nuts; null = none. A dimension that is not given comes from the table. */
  washers: z
    .strictObject({
      perBolt: z.union([z.literal(1), z.literal(2)]),
      insideDiameter_mm: positive.nullable(),
      outsideDiameter_mm: positive.nullable(),
      thickness_mm: positive.nullable(),
    })
    .nullable(),
  /** of the bolts; without it neither an elongation nor the effect of a temperature difference is known */
  material: z
    .strictObject({
      elasticModulus_MPa: z.number().min(1000).max(500_000),
      expansion_perK: z.number().min(1e-6).max(4e-5).nullable(),
      source: prose,
    })
    .nullable(),
});
export type ProcedureBolts = z.infer<typeof procedureBolts>;

/** A procedure: what a crew is briefed on. A revision in use is never edited. */
export const procedureContent = z.strictObject({
  numbering: z.enum(['clockwise', 'order']),
  pattern: z.enum(PATTERNS),
  tools: z.int().min(1).max(16),
  group: z.int().min(1).max(8).nullable(),
  passPercents: z.array(z.number().min(5).max(100)).min(1).max(6),
  finalRound: z.boolean(),
  relaxationPass: z.boolean(),
  method: tighteningMethod,
  /** of tensioners; without it no pressure can be calculated */
  coverage: coverage.nullable().optional(),
  /** absent = nothing is said of coating, washers and bolt material: what needs them is not checked */
  bolts: procedureBolts.nullable().optional(),
  lubricantId: id,
  appliesTo: z.strictObject({
    kinds: z.array(jointKind),
    ratings: z.array(line),
    gasketFamilies: z.array(gasketFamily),
    leastBolts: z.int().min(3),
    mostBolts: z.int().max(400),
    /** absent = work on a joint out of service; work in service must be named */
    workScopes: z.array(workScope).optional(),
  }),
  policy: z.strictObject({
    area: z.enum(['tensile', 'root']),
    minimumBoltUtilisation: z.number().min(0.05).max(0.9),
    maximumBoltUtilisation: z.number().min(0.1).max(0.95),
    scatter_percent: z.number().min(0).max(60),
    targetBoltStress_MPa: positive.nullable(),
    source: prose,
  }),
  cautions: z.array(prose).max(20),
});
export type ProcedureContent = z.infer<typeof procedureContent>;

/** A hydraulic wrench's pressure and torque, from its certificate. */
const pressureTorquePair = z.strictObject({
  pressure_MPa: positive,
  torque_Nm: positive,
});

export const siteEvents = {
  'site-settings-changed': z.strictObject({
    name: line.optional(),
    timeZone: line.optional(),
    units: z.enum(['SI', 'US']).optional(),
    reason: prose.nullable(),
  }),
  'person-registered': z.strictObject({
    personId: id,
    name: line,
    company: line,
    badge: line.nullable(),
    trade: line.nullable(),
  }),
  'person-erased': z.strictObject({ reason: prose }),
  'account-opened': z.strictObject({
    accountId: id,
    personId: id,
    email: z.email().max(200),
  }),
  'account-closed': z.strictObject({ reason: prose }),
  'role-granted': z.strictObject({
    grantId: id,
    accountId: id,
    role,
    reach,
    endsOn: day.nullable(),
  }),
  'role-ended': z.strictObject({ reason: prose.nullable() }),
  'deputy-named': z.strictObject({
    accountId: id,
    deputyAccountId: id,
    role,
    from: day,
    until: day,
  }),
  'qualification-recorded': z.strictObject({
    qualificationId: id,
    personId: id,
    qualifiedFor: z.array(qualifiedFor).min(1),
    validFrom: day,
    validThrough: day,
    scheme: line,
    certificate: fileHash.nullable(),
  }),
  'qualification-withdrawn': z.strictObject({ reason: prose }),
  /** version 2: `hydraulicArea_mm2` */
  'tool-registered': z.strictObject({
    toolId: id,
    tag: line,
    kind: z.enum(TOOL_KINDS),
    maker: line.nullable(),
    scaleMinimum: positive.nullable(),
    scaleMaximum: positive,
    scaleUnit: z.enum(['N·m', 'MPa', 'mm']),
    scaleDivision: positive.nullable(),
    /** of a tensioner, from its plate */
    hydraulicArea_mm2: positive.nullable().optional(),
  }),
  'calibration-recorded': z.strictObject({
    calibrationId: id,
    toolId: id,
    calibratedOn: day,
    validThrough: day,
    certificate: fileHash.nullable(),
    certificateNumber: line,
    provisional: z.boolean(),
    pairs: z.array(pressureTorquePair).max(40),
  }),
  'calibration-cleared': z.strictObject({ calibrationId: id }),
  'tool-failed': z.strictObject({ reason: prose, foundOn: day }),
  /** version 2: `content.coverage`; version 3: `content.bolts` */
  'procedure-drafted': z.strictObject({
    procedureId: id,
    revision: z.int().min(1),
    code: line,
    title: line,
    content: procedureContent,
  }),
  'procedure-approved': z.strictObject({ revision: z.int().min(1) }),
  'procedure-superseded': z.strictObject({
    revision: z.int().min(1),
    reason: prose,
  }),
  'target-table-approved': z.strictObject({
    tableId: id,
    name: line,
    procedureId: id,
    procedureRevision: z.int().min(1),
    gasketDataId: id,
    lubricantId: id,
    boltGrade: line,
    rows: z
      .array(
        z.strictObject({
          standard: line,
          size: line,
          rating: line,
          boltStress_MPa: positive,
          acceptedShortfall: prose.nullable(),
        }),
      )
      .min(1)
      .max(500),
  }),
  /** version 2: `rotationLimit_deg` */
  'gasket-data-entered': z.strictObject({
    gasketDataId: id,
    name: line,
    family: gasketFamily,
    seating_MPa: positive,
    operating_MPa: positive,
    target_MPa: positive,
    maximum_MPa: positive,
    /** highest rotation of one flange that the gasket bears; no limit is published */
    rotationLimit_deg: z.number().positive().max(5).nullable().optional(),
    source: prose,
  }),
  'lubricant-entered': z.strictObject({
    lubricantId: id,
    name: line,
    nutFactor: z.number().min(0.05).max(0.5),
    temperatureLimit_C: z.number().nullable(),
    source: prose,
  }),
  'maker-torque-entered': z.strictObject({
    makerTorqueId: id,
    item: line,
    torque_Nm: positive,
    torqueAsEntered: asEntered,
    source: prose,
  }),
  'key-enrolled': z.strictObject({
    keyId: id,
    personId: id,
    device: line,
    publicKey: z.string().max(600),
  }),
  'key-revoked': z.strictObject({ reason: prose }),
} as const;
