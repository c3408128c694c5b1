import type { EventType } from '@seatwell/contract';
import { amendmentDecisions } from '../amendments/decisions.ts';
import { blindDecisions } from '../blinds/decisions.ts';
import { jointDecisions } from '../joints/decisions.ts';
import { packDecisions } from '../packs/decisions.ts';
import { peopleDecisions } from '../people/decisions.ts';
import { permitDecisions } from '../permits/decisions.ts';
import { procedureDecisions } from '../procedures/decisions.ts';
import { punchDecisions } from '../punch-items/decisions.ts';
import { shutdownDecisions } from '../shutdowns/decisions.ts';
import { talkDecisions } from '../talks/decisions.ts';
import { toolDecisions } from '../tools/decisions.ts';
import type { Decide, Decisions } from './decision.ts';

/** Every event type and the decision function of its feature; a type without one does not compile. */
const DECISIONS: Decisions<EventType> = {
  ...shutdownDecisions,
  ...jointDecisions,
  ...packDecisions,
  ...permitDecisions,
  ...talkDecisions,
  ...punchDecisions,
  ...blindDecisions,
  ...amendmentDecisions,
  ...peopleDecisions,
  ...toolDecisions,
  ...procedureDecisions,
};

export const decisionFor = (type: EventType): Decide<EventType> => DECISIONS[type] as Decide<EventType>;
