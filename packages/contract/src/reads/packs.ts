import { z } from 'zod';
import { packEvents } from '../events/work-events.ts';
import { day, id, instant, makePurpose, stage } from '../primitives.ts';
import { allowedAction, areaRef, countsByStage, jointRef, personRef, systemRef, waitsForAnswer } from './common.ts';
import { permitRow, punchRow } from './joint-page.ts';
import { stopper } from './today.ts';

const packSummary = {
  packId: id,
  number: z.string(),
  area: areaRef.nullable(),
  system: systemRef.nullable(),
  plannedOn: day.nullable(),
  way: z.string(),
  medium: z.string(),
  pressure_MPa: z.number(),
  hold_min: z.number(),
  /** planned → ready (nothing stops the release) → released → held (a reading reached pressure and time) → proven */
  state: z.enum(['planned', 'ready', 'released', 'held', 'proven']),
  releasedAt: instant.nullable(),
  total: z.int(),
  stages: countsByStage,
  stoppers: z.array(stopper),
  version: z.int(),
};

/** `GET /packs` */
export const packsAnswer = z.object({ rows: z.array(z.object(packSummary)), actions: z.array(allowedAction) });
export type PacksAnswer = z.infer<typeof packsAnswer>;
export type PackSummary = PacksAnswer['rows'][number];

/** `GET /packs/:packId` */
export const packPage = z.object({
  ...packSummary,
  plan: packEvents['pack-planned'],
  released: packEvents['pack-released']
    .extend({ at: instant, by: personRef.nullable(), gaugeTags: z.record(z.string(), z.string()) })
    .nullable(),
  readings: z.array(
    packEvents['test-reading'].extend({
      /** reached the pack's pressure for its time */
      holds: z.boolean(),
    }),
  ),
  members: z.array(
    jointRef.extend({
      makeId: id,
      makeNumber: z.int(),
      purpose: makePurpose,
      role: z.enum(['inside', 'boundary', 'reinstated']),
      stage,
      flags: z.array(z.string()),
      waitsFor: waitsForAnswer,
      version: z.int(),
      size: z.string(),
      rating: z.string(),
      /** of the last reading that names it */
      result: z.enum(['no-leak', 'leak']).nullable(),
      cancelled: z.boolean(),
    }),
  ),
  punchItems: z.array(punchRow),
  gaugeTags: z.record(z.string(), z.string()),
  actions: z.array(allowedAction),
});
export type PackPage = z.infer<typeof packPage>;

const systemSummary = {
  systemId: id,
  code: z.string(),
  name: z.string(),
  area: areaRef.nullable(),
  total: z.int(),
  stages: countsByStage,
  /** what must be zero before hand-over */
  zeros: z.object({
    notProven: z.int(),
    temporaryBlindsIn: z.int(),
    temporaryFittings: z.int(),
    unclosedA: z.int(),
    unclosedB: z.int(),
  }),
  /** every joint of the system is handed over */
  handedOver: z.boolean(),
};

/** `GET /systems` */
export const systemsAnswer = z.object({ rows: z.array(z.object(systemSummary)), actions: z.array(allowedAction) });
export type SystemsAnswer = z.infer<typeof systemsAnswer>;

/** `GET /systems/:systemId`: the zeros by name, and the joints that a hand-over would take. */
export const systemPage = z.object({
  ...systemSummary,
  notProven: z.array(jointRef.extend({ stage, waitsFor: waitsForAnswer })),
  temporaryBlindsIn: z.array(z.object({ blindId: id, number: z.string(), joint: jointRef.nullable() })),
  temporaryFittings: z.array(jointRef.extend({ gasket: z.boolean(), bolts: z.boolean() })),
  unclosedA: z.array(punchRow),
  unclosedB: z.array(punchRow),
  joints: z.array(jointRef.extend({ makeId: id, version: z.int(), stage, offered: z.boolean() })),
  /** what the coordinator offers to operations: the latest offer that stands on a joint of the system */
  offer: z.object({ by: personRef.nullable(), at: instant, exceptions: z.array(z.string()) }).nullable(),
  actions: z.array(allowedAction),
});
export type SystemPage = z.infer<typeof systemPage>;

/** `GET /permits` */
export const permitsAnswer = z.object({ rows: z.array(permitRow), actions: z.array(allowedAction) });
export type PermitsAnswer = z.infer<typeof permitsAnswer>;

/** `GET /punch-items` */
export const punchItemsAnswer = z.object({ rows: z.array(punchRow), actions: z.array(allowedAction) });
export type PunchItemsAnswer = z.infer<typeof punchItemsAnswer>;
export const punchItemsQuery = z.object({ closed: z.enum(['no', 'yes', 'any']).default('no') });
