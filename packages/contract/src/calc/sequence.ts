import { z } from 'zod';
import { PATTERNS } from '../code-lists.ts';
import { calcExplainable, calcExplained, list } from './common.ts';

export const calcSequenceRequest = z.strictObject({
  boltCount: z.number(),
  pattern: z.enum(PATTERNS),
  group: z.number().exactOptional().describe('bolts per group, taken one after another'),
  tools: z.number().exactOptional().describe('bolts tightened at once'),
  passPercents: list(z.number()).exactOptional().describe('rising, ending at 100; 30, 70, 100 if left out'),
  numbering: z.enum(['clockwise', 'order']),
  reverse: z.boolean().exactOptional().describe('loosening'),
  viewedFrom: z.enum(['viewing-side', 'other-side']).exactOptional(),
  relaxation: z.boolean().exactOptional().describe('false leaves the relaxation pass out'),
  ...calcExplainable,
});

const steps = list(list(z.number()));

export const calcSequenceResponse = z.object({
  order: steps,
  passes: list(
    z.object({
      percent: z.number(),
      kind: z.enum(['pattern', 'final-round', 'relaxation']),
      steps,
    }),
  ),
  positions: list(z.object({ label: z.number(), clockwiseIndex: z.number(), angle_deg: z.number() })),
  moves: z.number(),
  ...calcExplained,
});
