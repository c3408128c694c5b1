import { z } from 'zod';
import { calcExplained, list } from './common.ts';

const flangeKey = z.strictObject({ standard: z.string(), size: z.string(), rating: z.string() });

export const calcFaceRequest = z.strictObject({
  gasketFamily: z.string(),
  seatingWidth_mm: z.number().describe('radial width that the gasket covers'),
  gasketCompression_mm: z.number().exactOptional(),
  flatness_mm: z.number().exactOptional(),
  imperfections: list(z.strictObject({ reach_mm: z.number(), depth_mm: z.number() })).exactOptional(),
});

export const calcAlignmentRequest = z.strictObject({
  joint: z.enum(['piping', 'machine-nozzle']),
  basis: z.enum(['PCC-1', 'B31.3']).exactOptional(),
  outsideDiameter_mm: z.number().exactOptional(),
  flange: flangeKey.exactOptional().describe('gives the outside diameter where nobody entered it'),
  gasketOutside_mm: z.number().exactOptional(),
  gasketThickness_mm: z.number().exactOptional(),
  offset_mm: z.number().exactOptional(),
  parallelism_mm: z.number().exactOptional(),
  rotation_mm: z.number().exactOptional(),
  pullIn_percent: z.number().exactOptional(),
  shaftMovement_mm: z.number().exactOptional(),
  gaps_mm: list(z.number()).exactOptional(),
});

/** Each reading that was given, with its limit and where that is from. */
export const calcReadingsResponse = z.object({
  readings: list(
    z.object({
      what: z.string(),
      value: z.number(),
      limit: z.number(),
      unit: z.enum(['mm', '% of target load']),
      accepted: z.boolean(),
      source: z.string(),
    }),
  ),
  ...calcExplained,
});

export const calcRetighteningRequest = z.strictObject({
  family: z.string(),
  hasBeenHot: z.boolean(),
  temperature_C: z.number(),
  hoursSinceAssembly: z.number(),
  siteWindow: z.strictObject({ from_C: z.number(), to_C: z.number(), source: z.string() }).exactOptional(),
  maker: z.strictObject({ allows: z.boolean(), source: z.string() }).exactOptional(),
});

export const calcRetighteningResponse = z.object({
  accepted: z.boolean(),
  reason: z.string(),
  source: z.string(),
  ...calcExplained,
});
