import { z } from 'zod';
import { list } from './common.ts';

const gasket = z.strictObject({
  family: z.string(),
  contactInside_mm: z.number().exactOptional(),
  contactOutside_mm: z.number().exactOptional(),
  curve: list(z.tuple([z.number(), z.number()]).readonly())
    .exactOptional()
    .describe('compression mm, stress MPa'),
  thickness_mm: z.number().exactOptional(),
  E0_MPa: z.number().exactOptional(),
  K1: z.number().exactOptional(),
});

/** A joint as the simulation takes it: of standard flanges, or by its equivalent ring. */
export const calcSimulatedJoint = z.union([
  z.strictObject({
    standard: z.string(),
    size: z.string(),
    rating: z.string(),
    boltCount: z.number().exactOptional(),
    kind: z.enum(['weld-neck-pair', 'weld-neck-to-blind']),
    gasket,
  }),
  z.strictObject({
    equivalentRing: z.strictObject({
      R_mm: z.number(),
      EI_Nmm2: z.number(),
      GJ_Nmm2: z.number(),
      cBolt_mm_per_N: z.number(),
      cGasket_mm3_per_N: z.number(),
    }),
    boltCount: z.number(),
    thread: z.string(),
    boltCircle_mm: z.number(),
    boltLength_mm: z.number(),
    gasket,
  }),
]);
