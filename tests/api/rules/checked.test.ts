import { CHECKED_CASES } from './checked-cases.ts';
import { testRules } from './rule-case.ts';

testRules(CHECKED_CASES);
