import { z } from 'zod';
import { calcExplained, list } from './common.ts';

export const calcFlangeParams = z.object({
  standard: z
    .string()
    .describe('ASME-B16.5, ASME-B16.47-A, ASME-B16.47-B or EN-1092-1')
    .meta({ examples: ['ASME-B16.5'] }),
  size: z
    .string()
    .describe('NPS8, NPS1.5 or DN200')
    .meta({ examples: ['NPS8'] }),
  rating: z
    .string()
    .describe('150 or PN16')
    .meta({ examples: ['300'] }),
});

export const calcFlangeQuery = z.object({
  boltCount: z.coerce.number().exactOptional().describe('4 or 8 where the standard leaves it open (EN DN 65)'),
});

export const calcFlangeResponse = z.object({
  standard: z.string(),
  size: z.string(),
  rating: z.string(),
  boltCount: z.number(),
  boltThread: z.string(),
  boltHole_mm: z.number(),
  boltCircle_mm: z.number(),
  outsideDiameter_mm: z.number(),
  thickness_mm: z.number(),
  thicknessIncludesRaisedFace: z.boolean(),
  raisedFaceDiameter_mm: z.number(),
  raisedFaceHeight_mm: z.number(),
  ringGroove: z.string().exactOptional(),
  studLength_mm: z.number().exactOptional(),
  studLengthRingJoint_mm: z.number().exactOptional(),
  source: z.string(),
  confidence: z.string(),
  ...calcExplained,
});

/** What the tables hold, for choices on a screen. */
export const calcFlangeListResponse = z.object({
  standards: list(
    z.object({
      standard: z.string(),
      sizes: list(z.object({ size: z.string(), ratings: list(z.string()) })),
    }),
  ),
});
