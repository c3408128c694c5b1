import { ENGINEERED_CASES, FACES_CASES, OPEN_CASES, RELEASED_CASES } from './engineering-and-opening-cases.ts';
import { testRules } from './rule-case.ts';

testRules({ ...ENGINEERED_CASES, ...RELEASED_CASES, ...OPEN_CASES, ...FACES_CASES });
