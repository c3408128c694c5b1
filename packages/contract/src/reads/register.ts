import { z } from 'zod';
import { REGISTER_SORTS } from '../code-lists.ts';
import { criticality, day, gasketFamily, id, instant, jointKind, role, stage, workScope } from '../primitives.ts';
import { areaRef, crewRef, packRef, punchCounts, several, systemRef, waitsForAnswer, yes } from './common.ts';

/** Filters of the register, as the query of `/joints`, `/joints/selection` and every figure that opens joints. */
export const registerFilters = z.object({
  area: several(id).optional(),
  system: several(id).optional(),
  pack: id.optional(),
  crew: several(id).optional(),
  stage: several(stage).optional(),
  stageFrom: stage.optional(),
  stageTo: stage.optional(),
  /** any of these flags, as rows show them */
  flag: several(z.string().max(40)).optional(),
  waitsFor: several(z.string().max(40)).optional(),
  /** the role that moves the joint on */
  by: role.optional(),
  plannedUpTo: day.optional(),
  plannedFrom: day.optional(),
  criticality: several(criticality).optional(),
  gasketFamily: several(gasketFamily).optional(),
  size: several(z.string().max(16)).optional(),
  rating: several(z.string().max(16)).optional(),
  kind: several(jointKind).optional(),
  /** part of a tag, line, location or item, in any case */
  search: z.string().trim().max(100).optional(),
  found: yes.optional(),
  /** true = only joints whose make has no target yet */
  withoutTarget: yes.optional(),
  voided: z.enum(['no', 'only', 'any']).default('no'),
});
export type RegisterFilters = z.infer<typeof registerFilters>;

export const registerQuery = registerFilters.extend({
  sort: z.enum(REGISTER_SORTS).default('tag'),
  /** turns the whole order round; what has no value stays last */
  descending: yes.default(false),
  /** `next` of the page before; belongs to the same filters and sort */
  cursor: z.string().max(1000).optional(),
  /** rows before the page in this order, for a jump; what follows is better read by the cursor, which excludes it */
  from: z.coerce.number().int().min(0).max(10_000_000).optional(),
  limit: z.coerce.number().int().min(1).max(500).default(100),
});
export type RegisterQuery = z.infer<typeof registerQuery>;

/** A joint in a list: its place, what it is, and where its make stands. */
export const jointRow = z.object({
  jointId: id,
  tag: z.string(),
  kind: jointKind,
  criticality,
  area: areaRef.nullable(),
  system: systemRef.nullable(),
  line: z.string().nullable(),
  location: z.string().nullable(),
  item: z.string().nullable(),
  standard: z.string(),
  size: z.string(),
  rating: z.string(),
  boltCount: z.int().nullable(),
  boltThread: z.string().nullable(),
  gasketFamily,
  stage,
  stageSince: instant.nullable(),
  flags: z.array(z.string()),
  waitsFor: waitsForAnswer,
  torque_Nm: z.number().nullable(),
  crew: crewRef.nullable(),
  plannedOn: day.nullable(),
  packs: z.array(packRef),
  makeId: id.nullable(),
  makeNumber: z.int().nullable(),
  makeCount: z.int(),
  workScope: workScope.nullable(),
  /** what a decision on the joint must have seen */
  version: z.int(),
  found: z.boolean(),
  /** why there is no work on it: duplicate, not-found, welded-up, not-opened, merged */
  voided: z.string().nullable(),
  punch: punchCounts,
});
export type JointRow = z.infer<typeof jointRow>;

/** `GET /joints` */
export const registerAnswer = z.object({
  rows: z.array(jointRow),
  /** cursor of the next page; null at the end */
  next: z.string().nullable(),
  /** joints behind the filters; not exact = at least that many. Null on all pages but the first */
  total: z.object({ count: z.int(), exact: z.boolean() }).nullable(),
  /** of the whole register, whatever the filters; null on all pages but the first */
  registerTotal: z.int().nullable(),
  withoutTarget: z.int().nullable(),
  foundCount: z.int().nullable(),
});
export type RegisterAnswer = z.infer<typeof registerAnswer>;

/** `GET /joints/selection`: what a list command needs of each joint behind the filters. */
export const selectionAnswer = z.object({
  rows: z.array(z.object({ jointId: id, makeId: id.nullable(), version: z.int(), tag: z.string() })),
  /** more than 20,000 joints are behind the filters and the rest was left out */
  truncated: z.boolean(),
});
export type SelectionAnswer = z.infer<typeof selectionAnswer>;
