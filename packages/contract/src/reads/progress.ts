import { z } from 'zod';
import { id, role } from '../primitives.ts';
import { areaRef, countsByStage, personRef } from './common.ts';
import { peopleReadiness } from './today.ts';

/** A sign-off of an area: how many are given, how many wait now, and for whom. */
export const signOffCount = z.object({
  what: z.enum(['release', 'check', 'witness', 'proof', 'hand-over']),
  given: z.int(),
  waiting: z.int(),
  by: z.array(z.object({ role, count: z.int(), persons: z.array(personRef) })),
});

/** `GET /areas`: progress by stage, sign-offs given and waiting, and the qualifications of who works there. */
export const areasAnswer = z.object({
  rows: z.array(
    z.object({
      /** null = joints that are in no area */
      area: areaRef.nullable(),
      total: z.int(),
      stages: countsByStage,
      planned: z.int(),
      signOffs: z.array(signOffCount),
      people: peopleReadiness,
    }),
  ),
});
export type AreasAnswer = z.infer<typeof areasAnswer>;
export type AreaProgress = AreasAnswer['rows'][number];

export const PROGRESS_DIMENSIONS = ['area', 'system', 'pack', 'crew'] as const;
export const progressQuery = z.object({ by: z.enum(PROGRESS_DIMENSIONS).default('area') });

/** `GET /progress?by=system`: joints by stage of each area, system, pack or crew. */
export const progressAnswer = z.object({
  by: z.enum(PROGRESS_DIMENSIONS),
  rows: z.array(
    z.object({
      /** null = joints that are in none */
      id: id.nullable(),
      code: z.string().nullable(),
      name: z.string().nullable(),
      total: z.int(),
      stages: countsByStage,
    }),
  ),
});
export type ProgressAnswer = z.infer<typeof progressAnswer>;
