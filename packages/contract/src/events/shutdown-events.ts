import { z } from 'zod';
import {
  checkingLevel,
  criticality,
  day,
  id,
  instant,
  line,
  nonNegative,
  positive,
  prose,
  punchCategory,
  severity,
} from '../primitives.ts';

export const shift = z.strictObject({
  name: line,
  starts: z.string().regex(/^([01]\d|2[0-3]):[0-5]\d$/),
  ends: z.string().regex(/^([01]\d|2[0-3]):[0-5]\d$/),
});

/** What a criticality demands; the shipped table is in packages/workflow. */
export const criticalityDemand = z.strictObject({
  checkingLevel,
  witnessPoint: z.boolean(),
  measuredFlatness: z.boolean(),
  relaxationPass: z.boolean(),
  checkerFromOtherCompany: z.boolean(),
});

/** Everything of a shutdown that a rule reads and a site may set. */
export const shutdownSettings = z.strictObject({
  criticalities: z.strictObject({
    A: criticalityDemand,
    B: criticalityDemand,
    C: criticalityDemand,
  }),
  /** rule code → severity by criticality; may only raise what is shipped */
  severities: z.record(z.string(), z.partialRecord(criticality, severity)),
  sampleShare: z.number().min(0.01).max(1),
  faceAcceptanceLapses_h: positive,
  provisionalToolCleared_h: positive,
  relaxationPassAfter_h: positive,
  relaxationPassOverdue_h: positive,
  leastSecondsPerBolt: nonNegative,
  alignment: z.strictObject({
    parallelism_mm: positive,
    offset_mm: positive,
    rotation_mm: positive,
    pullIn_percent: positive,
    qcBand_factor: z.number().min(1).max(3),
    source: line,
  }),
  largeFlangeFrom_mm: positive,
  leastMetalTemperature_C: z.number(),
});
export type ShutdownSettings = z.infer<typeof shutdownSettings>;

export const shutdownEvents = {
  'shutdown-opened': z.strictObject({
    name: line,
    timeZone: line,
    startsOn: day,
    endsOn: day,
    shifts: z.array(shift).min(1).max(4),
    units: z.enum(['SI', 'US']),
    areaBasis: z.enum(['tensile', 'root']),
  }),
  'settings-changed': z.strictObject({
    settings: shutdownSettings.partial(),
    reason: prose,
  }),
  'area-listed': z.strictObject({ areaId: id, code: line, name: line }),
  'system-listed': z.strictObject({
    systemId: id,
    areaId: id.nullable(),
    code: line,
    name: line,
  }),
  'crew-listed': z.strictObject({
    crewId: id,
    code: line,
    company: line,
    shift: line.nullable(),
    personIds: z.array(id).max(200),
  }),
  'permit-recorded': z.strictObject({
    permitId: id,
    number: line,
    isolationReference: line.nullable(),
    jointIds: z.array(id).min(1).max(500),
    validFrom: instant,
    validUntil: instant,
  }),
  'permit-withdrawn': z.strictObject({ reason: prose }),
  'talk-held': z.strictObject({
    talkId: id,
    procedureId: id,
    revision: z.int().min(1),
    crewId: id.nullable(),
    heldBy: id,
    attendees: z
      .array(
        z.strictObject({
          personId: id,
          signedBy: z.enum(['pin', 'drawn-signature', 'account']),
        }),
      )
      .min(1)
      .max(200),
  }),
  'punch-raised': z.strictObject({
    punchId: id,
    category: punchCategory,
    text: prose,
    jointId: id.nullable(),
    packId: id.nullable(),
    systemId: id.nullable(),
    owner: line.nullable(),
  }),
  'punch-closed': z.strictObject({ how: prose }),
} as const;
