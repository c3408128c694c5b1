import { z } from 'zod';
import { day, id, instant, role, tighteningMethod } from '../primitives.ts';
import { areaRef, crewRef, jointRef, packRef, personRef, restartAnswer, sentenceData } from './common.ts';

export const shiftAnswer = z.object({ name: z.string(), day, start: instant, end: instant });

/** Who moves something on: a role always, persons and crew where they are known. */
export const whoAnswer = z.object({ role: role.nullable(), persons: z.array(personRef), crew: crewRef.nullable() });
export type WhoAnswer = z.infer<typeof whoAnswer>;

export const partTightRow = jointRef.extend({
  makeId: id,
  kind: z.string(),
  size: z.string(),
  rating: z.string(),
  boltCount: z.int().nullable(),
  area: areaRef.nullable(),
  crew: crewRef.nullable(),
  leftAt: instant.nullable(),
  /** the pass that was left, and the last bolt done in the procedure's numbering */
  pass: z.int().nullable(),
  lastBolt: z.int().nullable(),
  why: z.string().nullable(),
  leftBy: z.array(personRef),
  restart: restartAnswer.nullable(),
  /** left in an earlier shift than now */
  interruptedLastShift: z.boolean(),
});
export type PartTightRow = z.infer<typeof partTightRow>;

/**
 * Something that stops a pack or a system: a code with the values of its sentence.
 * Pack codes in the order of work: `joints-not-tight` {count, of, tag}, `relaxation-due` {count, tag}, `joints-not-checked`
 * {count, of, tag}, `joints-rejected` {count, tag}, `joints-leaking` {count, tag}, `punch-a-open` {count, text},
 * `provisional-tools` {count, tag}, `release-not-signed` {}, `readings-missing` {pressure_MPa, hold_min},
 * `joints-not-proven` {count, of, tag}, `no-joints` {}.
 */
export const stopper = z.object({ code: z.string(), data: sentenceData, who: whoAnswer });
export type Stopper = z.infer<typeof stopper>;

export const curvePoint = z.object({ day, count: z.int() });

/** `GET /today` */
export const todayAnswer = z.object({
  now: instant,
  shutdown: z.object({
    name: z.string(),
    startsOn: day,
    endsOn: day,
    timeZone: z.string(),
    /** 1 on the first day; may be below 1 before it and above `days` after */
    dayNumber: z.int(),
    days: z.int(),
  }),
  shift: shiftAnswer,
  lastShift: shiftAnswer,
  total: z.int(),
  /** tight or beyond */
  tight: z.int(),
  partTight: z.array(partTightRow),
  /** the next packs by planned day that are not proven, each with its first stopper; `all` counts the packs */
  packs: z.object({
    rows: z.array(packRef.extend({ plannedOn: day.nullable(), stopper, more: z.int() })),
    all: z.int(),
  }),
  signOffs: z.array(
    z.object({
      /** `release`, `check`, `witness`, `proof`, `hand-over`, `target`, `procedure`, `hold`, `review` */
      waitsFor: z.string(),
      role: role.nullable(),
      count: z.int(),
      /** holders of the role whose reach covers the shutdown or an area of it; at most five */
      persons: z.array(personRef),
    }),
  ),
  stillIn: z.object({
    blindsIn: z.int(),
    blindsOverdue: z.int(),
    temporaryGaskets: z.int(),
    temporaryBolts: z.int(),
    /** joints that are open or faces accepted: an end that is not closed */
    openEnds: z.int(),
    /** of them, opened without a cover recorded */
    openEndsUncovered: z.int(),
  }),
  lastShiftByArea: z.array(z.object({ area: areaRef.nullable(), opened: z.int(), tight: z.int(), checked: z.int() })),
  lapses: z.array(
    z.discriminatedUnion('what', [
      z.object({ what: z.literal('calibration'), toolId: id, tag: z.string(), validThrough: day }),
      z.object({
        what: z.literal('provisional-tool'),
        toolId: id,
        tag: z.string(),
        clearBy: instant,
      }),
      z.object({
        what: z.literal('qualification'),
        person: personRef,
        qualifiedFor: z.array(z.string()),
        validThrough: day,
      }),
      z.object({
        what: z.literal('talk'),
        procedureId: id,
        revision: z.int(),
        code: z.string(),
        crew: crewRef,
        /** persons of the crew who attended no talk on this revision */
        missing: z.array(personRef),
      }),
    ]),
  ),
  tightByArea: z.array(
    z.object({
      area: areaRef.nullable(),
      total: z.int(),
      /** checked or beyond */
      checked: z.int(),
      /** tight, not checked */
      tight: z.int(),
      /** part tight or nipped up */
      begun: z.int(),
      /** joints planned up to now */
      planned: z.int(),
    }),
  ),
  /** cumulative counts at the end of each day of the shutdown; actual ends today */
  curve: z.object({ plan: z.array(curvePoint), actual: z.array(curvePoint), unplanned: z.int() }),
  needsReview: z.int(),
  holds: z.int(),
  leaking: z.int(),
});
export type TodayAnswer = z.infer<typeof todayAnswer>;

/** Who works somewhere, and whether they may. */
export const peopleReadiness = z.object({
  /** persons of the crews assigned */
  persons: z.int(),
  inDate: z.int(),
  lapsing: z.array(z.object({ person: personRef, qualifiedFor: z.string(), validThrough: day })),
  missing: z.array(z.object({ person: personRef, crew: crewRef, method: tighteningMethod, plannedJoints: z.int() })),
});
