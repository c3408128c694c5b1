import { AMENDING_CASES } from './rule-cases/amending-cases.ts';
import { CHECKING_CASES } from './rule-cases/checking-cases.ts';
import { CLOSING_CASES } from './rule-cases/closing-cases.ts';
import { ENGINEERED_TO_OPEN_CASES } from './rule-cases/engineered-to-open-cases.ts';
import { ORDER_AND_REGISTER_CASES } from './rule-cases/order-and-register-cases.ts';
import { PROVING_AND_HANDING_OVER_CASES } from './rule-cases/proving-and-handing-over-cases.ts';
import type { RuleCase } from './rule-cases/rule-case.ts';
import { TIGHTENING_CASES } from './rule-cases/tightening-cases.ts';

/** Each rule about a make in its two cases; those of packs are in rule-cases/pack-cases.ts. */
export const RULE_CASES: Readonly<Record<string, RuleCase>> = {
  ...ORDER_AND_REGISTER_CASES,
  ...ENGINEERED_TO_OPEN_CASES,
  ...CLOSING_CASES,
  ...TIGHTENING_CASES,
  ...CHECKING_CASES,
  ...PROVING_AND_HANDING_OVER_CASES,
  ...AMENDING_CASES,
};
