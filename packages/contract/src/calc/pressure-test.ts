import { z } from 'zod';
import { calcExplainable, calcExplained } from './common.ts';

export const calcPneumaticTestRequest = z.strictObject({
  testPressure_MPa: z.number().describe('gauge'),
  volume_m3: z.number(),
  gasRatio: z.number().exactOptional(),
  method: z.enum(['PCC-2-2008', 'PCC-2-2018']),
  ...calcExplainable,
});

export const calcPneumaticTestResponse = z.object({
  storedEnergy_J: z.number(),
  tntEquivalent_kg: z.number(),
  distance_m: z.number(),
  scaledDistance_m: z.number(),
  governedBy: z.enum(['scaled-distance', 'floor']),
  ...calcExplained,
});
