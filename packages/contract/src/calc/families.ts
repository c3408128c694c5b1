import { z } from 'zod';
import { calcExplained, list } from './common.ts';
import { calcTargetRequest, calcTargetResponse } from './target.ts';

export const calcSensitivitiesResponse = z.object({
  sensitivities: list(
    z.object({
      input: z.string().describe('10 % more of it, the others kept'),
      target_percent: z.number(),
      torque_percent: z.number().exactOptional(),
      floor_percent: z.number(),
      ceiling_percent: z.number(),
      open: z.boolean(),
    }),
  ),
  ...calcExplained,
});

const { flange: _flange, gasket, clampedParts: _parts, working: _working, ...common } = calcTargetRequest.shape;

export const calcTargetTableRequest = z.strictObject({
  standard: z.string(),
  sizes: list(z.string()).exactOptional(),
  ratings: list(z.string()).exactOptional(),
  common: z.strictObject(common),
  gasket: gasket.omit({ contactInside_mm: true, contactOutside_mm: true }),
});

export const calcTargetTableResponse = z.object({
  rows: list(
    z.union([
      z.object({ size: z.string(), rating: z.string(), refused: z.string() }),
      z.object({
        size: z.string(),
        rating: z.string(),
        boltCount: z.number(),
        boltThread: z.string(),
        acrossFlats_mm: z.number().exactOptional(),
        boltStress_MPa: z.number(),
        governedBy: z.string(),
        windowOpen: z.boolean(),
        passes: calcTargetResponse.shape.passes,
      }),
    ]),
  ),
  ...calcExplained,
});

export const calcWeakJointsRequest = z.strictObject({
  standard: z.string(),
  family: z.string(),
  boltStress_MPa: z.number().describe('on the root area'),
  gasketStress_MPa: z.number().describe('wanted over the full contact width'),
  grade: z.string(),
});

export const calcWeakJointsResponse = z.object({
  joints: list(
    z.object({
      size: z.string(),
      rating: z.string(),
      gasketStress_MPa: z.number(),
      neededBoltStress_MPa: z.number(),
      neededShareOfYield: z.number(),
    }),
  ),
  ...calcExplained,
});
