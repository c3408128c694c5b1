import { NIPPED_UP_CASES, PASSES_CASES, TIGHT_CASES } from './closing-cases.ts';
import { testRules } from './rule-case.ts';

testRules({ ...NIPPED_UP_CASES, ...PASSES_CASES, ...TIGHT_CASES });
