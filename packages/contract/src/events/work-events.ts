import { z } from 'zod';
import { PATTERNS } from '../code-lists.ts';
import {
  asEntered,
  checkingLevel,
  day,
  fileHash,
  gasketFamily,
  id,
  instant,
  line,
  nonNegative,
  number,
  positive,
  proofWay,
  prose,
  role,
} from '../primitives.ts';

/** What a tool was set to; exactly one of the SI values, and what the dial showed. */
/** Offered by the coordinator and taken by operations: both sign the same system with the same exceptions. */
const handOver = z.strictObject({
  systemId: id,
  exceptions: z.array(prose).max(50),
});

export const toolSetting = z
  .strictObject({
    torque_Nm: positive.optional(),
    pressure_MPa: positive.optional(),
    elongation_mm: positive.optional(),
    asEntered,
  })
  .refine((set) => [set.torque_Nm, set.pressure_MPa, set.elongation_mm].filter((v) => v !== undefined).length === 1, {
    error: 'Give one setting: a torque, a pump pressure or an elongation.',
  });
export type ToolSetting = z.infer<typeof toolSetting>;

const toolsUsed = z.strictObject({
  toolId: id,
  pumpId: id.nullable(),
  gaugeId: id.nullable(),
});

export const faceReading = z.strictObject({
  /** 1 = the face nearest the viewing side; every face of the stack is listed */
  face: z.int().min(1).max(8),
  condition: z.enum(['clean', 'light-marks', 'scored', 'corroded', 'damaged']),
  flatness_mm: nonNegative.nullable(),
  imperfectionDepth_mm: nonNegative.nullable(),
  imperfectionExtent_mm: nonNegative.nullable(),
  ringGrooveTouched: z.boolean().nullable(),
  accepted: z.boolean(),
  photo: fileHash.nullable(),
});

export const alignmentReadings = z.strictObject({
  parallelism_mm: nonNegative.nullable(),
  offset_mm: nonNegative.nullable(),
  rotation_mm: nonNegative.nullable(),
  pullIn_percent: nonNegative.nullable(),
  gaps_mm: z.array(nonNegative).max(8),
});

const tightening = {
  set: toolSetting,
  tools: toolsUsed,
  startedAt: instant,
  endedAt: instant,
};

/** How the joint is tightened, chosen by the engineer from the simulation; without it, by the procedure. */
export const tighteningChoice = z.discriminatedUnion('way', [
  /** the pattern of the assigned procedure, named so that another procedure does not pass for the choice */
  z.strictObject({ way: z.literal('pattern'), pattern: z.enum(PATTERNS) }),
  /** every step with its own load, in a few set values on the division of the wrench */
  z.strictObject({
    way: z.literal('computed-loads'),
    toolDivision_Nm: positive,
    setValues: z.int().min(1).max(4),
  }),
]);
export type TighteningChoice = z.infer<typeof tighteningChoice>;

/** The tensioner that the pressures are for, and the division of the gauge that they are set on. */
export const tensionerChoice = z.strictObject({ toolId: id, gaugeDivision_MPa: positive });
export type TensionerChoice = z.infer<typeof tensionerChoice>;

export const workEvents = {
  'procedure-assigned': z.strictObject({
    procedureId: id,
    revision: z.int().min(1),
  }),
  /** version 2: `tightening`; version 3: `tensioner` */
  'target-approved': z.discriminatedUnion('basis', [
    z.strictObject({
      basis: z.literal('calculated'),
      gasketDataId: id,
      lubricantId: id,
      boltStress_MPa: positive.nullable(),
      acceptedShortfall: prose.nullable(),
      tightening: tighteningChoice.nullable().optional(),
      tensioner: tensionerChoice.nullable().optional(),
    }),
    z.strictObject({ basis: z.literal('target-table'), tableId: id }),
    z.strictObject({
      basis: z.literal('makers-torque'),
      torque_Nm: positive,
      torqueAsEntered: asEntered,
      lubricant: line,
      source: prose,
    }),
  ]),
  'hold-placed': z.strictObject({
    holdId: id,
    reason: prose,
    releasedBy: role,
  }),
  'hold-released': z.strictObject({ holdId: id, reason: prose }),
  'break-released': z.strictObject({ permitId: id, remark: prose.nullable() }),
  opened: z.strictObject({
    zeroEnergyChecks: z.array(z.strictObject({ personId: id, how: line })).max(4),
    cautionShown: z.boolean(),
    openEndsCovered: z.boolean(),
    photo: fileHash.nullable().optional(),
    remark: prose.nullable(),
  }),
  'faces-inspected': z.strictObject({
    faces: z.array(faceReading).min(1).max(8),
    bolting: z.strictObject({
      condition: z.enum(['new', 'reused']),
      accepted: z.boolean(),
    }),
    accepted: z.boolean(),
    remark: prose.nullable(),
  }),
  'nipped-up': z.strictObject({
    gasket: z.strictObject({
      family: gasketFamily,
      detail: line.nullable(),
      size: line.nullable(),
      rating: line.nullable(),
      purpose: z.enum(['final', 'spade-in', 'test', 'temporary']),
      count: z.int().min(0).max(4),
      batch: line.nullable(),
      markingPhoto: fileHash.nullable(),
    }),
    bolting: z.strictObject({
      grade: line,
      condition: z.enum(['new', 'reused']),
      count: z.int().min(3).max(400),
      temporary: z.boolean(),
    }),
    lubricantId: id.nullable(),
    lubricant: line,
    alignment: alignmentReadings,
    remark: prose.nullable(),
  }),
  'pass-recorded': z.strictObject({
    pass: z.int().min(1).max(12),
    ...tightening,
    outcome: z.enum(['finished', 'interrupted']),
    /** label of the last bolt done, in the procedure's numbering; null when no bolt was done or the pass ended */
    lastBolt: z.int().min(1).max(400).nullable(),
    boltsDone: z.int().min(0).max(400),
    why: prose.nullable(),
    /** gap check before a restart of a joint left overnight */
    gapsChecked_mm: z.array(nonNegative).max(8).nullable(),
  }),
  'final-round-recorded': z.strictObject({
    ...tightening,
    rounds: z.int().min(1).max(20),
    nutMoved: z.boolean(),
  }),
  'relaxation-pass-recorded': z.strictObject({
    ...tightening,
    nutsMoved: z.int().min(0).max(400),
  }),
  'stud-replaced': z.strictObject({
    bolts: z.array(z.int().min(1).max(400)).min(1).max(400),
    grade: line,
    reason: prose,
  }),
  loosened: z.strictObject({
    extent: z.enum(['some', 'all']),
    bolts: z.array(z.int().min(1).max(400)).max(400),
    reason: prose,
  }),
  'leak-found': z.strictObject({
    when: z.enum(['test', 'start-up', 'service']),
    where: line.nullable(),
    underPressure: z.boolean(),
    packId: id.nullable(),
    punchId: id,
    remark: prose,
  }),
  checked: z.strictObject({
    level: checkingLevel,
    outcome: z.enum(['accepted', 'rejected']),
    reason: prose.nullable(),
  }),
  witnessed: z.strictObject({
    point: z.enum(['tightening', 'test']),
    remark: prose.nullable(),
  }),
  'witness-waived': z.strictObject({
    point: z.enum(['tightening', 'test']),
    reason: prose,
  }),
  'deviation-accepted': z.strictObject({
    rule: line,
    reason: prose,
    until: day.nullable(),
  }),
  proven: z.strictObject({
    way: proofWay,
    packId: id.nullable(),
    remark: prose.nullable(),
  }),
  'hand-over-offered': handOver,
  'handed-over': handOver,
  'taken-back': z.strictObject({ reason: prose }),
} as const;

export const packEvents = {
  'pack-planned': z.strictObject({
    packId: id,
    number: line,
    systemId: id.nullable(),
    areaId: id.nullable(),
    way: proofWay,
    medium: line,
    pressure_MPa: positive,
    pressureAsEntered: asEntered.nullable(),
    hold_min: positive,
    plannedOn: day.nullable(),
  }),
  'pack-released': z.strictObject({
    boundaryWalked: z.boolean(),
    blindsRated: z.boolean(),
    reliefValvesOut: z.boolean(),
    metalTemperature_C: number,
    gaugeIds: z.array(id).max(6),
    remark: prose.nullable(),
  }),
  'test-reading': z.strictObject({
    readAt: instant,
    pressure_MPa: nonNegative,
    pressureAsEntered: asEntered,
    metalTemperature_C: number.nullable(),
    gaugeIds: z.array(id).max(6),
    held_min: nonNegative,
    results: z
      .array(
        z.strictObject({
          jointId: id,
          makeId: id,
          result: z.enum(['no-leak', 'leak']),
        }),
      )
      .max(2000),
  }),
} as const;

export const amendmentEvents = {
  corrected: z.strictObject({
    eventId: id,
    payload: z.record(z.string(), z.unknown()),
    reason: prose,
  }),
  revoked: z.strictObject({ eventId: id, reason: prose }),
  'review-settled': z.strictObject({
    eventId: id,
    outcome: z.enum(['accept', 'accept-with-punch-item', 'reject-as-not-done']),
    reason: prose,
    punchId: id.nullable(),
  }),
} as const;
