import { AMENDMENT_CASES } from './amendments-cases.ts';
import { HANDED_OVER_CASES } from './handed-over-cases.ts';
import { testRules } from './rule-case.ts';

testRules({ ...HANDED_OVER_CASES, ...AMENDMENT_CASES });
