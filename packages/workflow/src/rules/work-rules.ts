import { amendmentRules } from './amendments.ts';
import { checkedRules } from './checked.ts';
import { engineeredRules } from './engineered.ts';
import { facesRules } from './faces.ts';
import { handedOverRules } from './handed-over.ts';
import { holdRules } from './holds.ts';
import { nippedUpRules } from './nipped-up.ts';
import { openRules } from './open.ts';
import { orderAndHoldRules } from './order.ts';
import { passesRules } from './passes.ts';
import { provenRules } from './proven.ts';
import { registerRules } from './register.ts';
import { releasedRules } from './released.ts';
import type { Rule } from './rule.ts';
import { tightRules } from './tight.ts';
import { toolRules } from './tools.ts';

/** Every rule about a make except those about deviations, which look rules up here. */
export const RULES_ABOUT_WORK: readonly Rule[] = [
  ...orderAndHoldRules,
  ...registerRules,
  ...engineeredRules,
  ...releasedRules,
  ...openRules,
  ...facesRules,
  ...nippedUpRules,
  ...passesRules,
  ...toolRules,
  ...tightRules,
  ...checkedRules,
  ...provenRules,
  ...handedOverRules,
  ...holdRules,
  ...amendmentRules,
];
