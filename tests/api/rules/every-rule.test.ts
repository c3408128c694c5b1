import { RULES } from '@seatwell/workflow';
import { expect, it } from 'vitest';
import { AMENDMENT_CASES } from './amendments-cases.ts';
import { CHECKED_CASES } from './checked-cases.ts';
import { NIPPED_UP_CASES, PASSES_CASES, TIGHT_CASES } from './closing-cases.ts';
import { ENGINEERED_CASES, FACES_CASES, OPEN_CASES, RELEASED_CASES } from './engineering-and-opening-cases.ts';
import { HANDED_OVER_CASES } from './handed-over-cases.ts';
import { ORDER_CASES } from './order-cases.ts';
import { PACK_CASES, PROVEN_CASES } from './proven-cases.ts';

// Each of these is told in a test file beside this one.
const told = [
  ORDER_CASES,
  ENGINEERED_CASES,
  RELEASED_CASES,
  OPEN_CASES,
  FACES_CASES,
  NIPPED_UP_CASES,
  PASSES_CASES,
  TIGHT_CASES,
  CHECKED_CASES,
  PROVEN_CASES,
  PACK_CASES,
  HANDED_OVER_CASES,
  AMENDMENT_CASES,
].flatMap((cases) => Object.keys(cases));

it('has both scenarios over the API for every rule of the table, once', () => {
  expect(told.sort()).toEqual(RULES.map((rule) => rule.code).sort());
});
