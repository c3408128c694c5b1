import { ORDER_CASES } from './order-cases.ts';
import { testRules } from './rule-case.ts';

testRules(ORDER_CASES);
