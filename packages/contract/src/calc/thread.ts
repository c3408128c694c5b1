import { z } from 'zod';
import { calcExplainable, calcExplained } from './common.ts';

export const calcThreadRequest = z.strictObject({
  thread: z.string().describe('M20, M20x1.5, 3/4-10 UNC, 1 1/8-8 UN'),
  ...calcExplainable,
});

export const calcThreadResponse = z.object({
  thread: z.string(),
  nominalDiameter_mm: z.number(),
  pitch_mm: z.number(),
  pitchDiameter_mm: z.number(),
  minorDiameter_mm: z.number(),
  tensileStressArea_mm2: z.number(),
  rootArea_mm2: z.number(),
  rootAreaBasis: z.enum(['ISO-A3', 'ASME-B1.1-minor']),
  pcc1RootArea_mm2: z.number().exactOptional(),
  ...calcExplained,
});
