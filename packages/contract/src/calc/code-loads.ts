import { z } from 'zod';
import { calcExplainable, calcExplained } from './common.ts';

export const calcGasketLoadsRequest = z.strictObject({
  gasketOutside_mm: z.number(),
  gasketInside_mm: z.number(),
  m: z.number(),
  y_MPa: z.number(),
  pressure_MPa: z.number(),
  facing: z.enum(['flat', 'ring-joint']).exactOptional(),
  axialForce_N: z.number().exactOptional(),
  moment_Nm: z.number().exactOptional(),
  equivalentPressureInGasketTerm: z.boolean().exactOptional(),
  ...calcExplainable,
});

export const calcGasketLoadsResponse = z.object({
  effectiveWidth_mm: z.number(),
  reactionDiameter_mm: z.number(),
  equivalentPressure_MPa: z.number(),
  hydrostaticEndForce_N: z.number(),
  gasketOperatingLoad_N: z.number(),
  operatingBoltLoad_N: z.number(),
  seatingBoltLoad_N: z.number(),
  ...calcExplained,
});

export const calcFlangeStressRequest = z.strictObject({
  kind: z.enum(['integral', 'loose']),
  outsideDiameter_mm: z.number(),
  insideDiameter_mm: z.number(),
  boltCircle_mm: z.number(),
  thickness_mm: z.number(),
  hub: z
    .strictObject({ length_mm: z.number(), smallThickness_mm: z.number(), largeThickness_mm: z.number() })
    .exactOptional(),
  loads: z.strictObject({
    reactionDiameter_mm: z.number(),
    equivalentPressure_MPa: z.number(),
    operatingBoltLoad_N: z.number(),
    seatingDesignLoad_N: z.number(),
  }),
  allowables: z.strictObject({
    flangeOperating_MPa: z.number(),
    flangeSeating_MPa: z.number(),
    elasticModulusOperating_MPa: z.number(),
    elasticModulusSeating_MPa: z.number(),
  }),
  ...calcExplainable,
});

const state = z.object({
  longitudinalHub_MPa: z.number(),
  radial_MPa: z.number(),
  tangential_MPa: z.number(),
  rigidityJ: z.number(),
  ok: z.boolean(),
});

export const calcFlangeStressResponse = state.extend({
  K: z.number(),
  T: z.number(),
  U: z.number(),
  Y: z.number(),
  Z: z.number(),
  F: z.number().exactOptional(),
  V: z.number().exactOptional(),
  f: z.number().exactOptional(),
  e: z.number().exactOptional(),
  d: z.number().exactOptional(),
  L: z.number().exactOptional(),
  momentOperating_Nm: z.number(),
  momentSeating_Nm: z.number(),
  operating: state,
  seating: state,
  ...calcExplained,
});
