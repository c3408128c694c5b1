import { z } from 'zod';
import { calcArea, calcExplainable, calcExplained, list } from './common.ts';
import { calcSimulatedJoint } from './simulated-joint.ts';

export const calcElongationRequest = z.strictObject({
  thread: z.string(),
  load_N: z.number(),
  effectiveLength_mm: z.number(),
  elasticModulus_MPa: z.number(),
  area: calcArea.exactOptional().describe('area of the elastic length; tensile if left out'),
  shankLength_mm: z.number().exactOptional(),
  shankDiameter_mm: z.number().exactOptional(),
  ...calcExplainable,
});

export const calcElongationResponse = z.object({ elongation_mm: z.number(), ...calcExplained });

export const calcTensionerRequest = z.strictObject({
  thread: z.string(),
  residualLoad_N: z.number(),
  effectiveLength_mm: z.number(),
  hydraulicArea_mm2: z.number(),
  coverage: z.union([z.literal(1), z.literal(0.5), z.literal(0.33), z.literal(0.25)]),
  yield_MPa: z.number(),
  protrusion_mm: z.number().exactOptional(),
  toolMaximumPressure_MPa: z.number().exactOptional(),
  joint: calcSimulatedJoint.exactOptional().describe('as in /simulation; gives the pressures of the groups'),
  ...calcExplainable,
});

export const calcTensionerResponse = z.object({
  loadTransferFactor: z.number(),
  toolLoad_N: z.number(),
  pressure_MPa: z.number(),
  groupPressures_MPa: list(z.number()).exactOptional(),
  utilisation: z.number(),
  ...calcExplained,
});
