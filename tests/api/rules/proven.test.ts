import { PACK_CASES, PROVEN_CASES } from './proven-cases.ts';
import { testRules } from './rule-case.ts';

testRules({ ...PROVEN_CASES, ...PACK_CASES });
