import type { AllowedAction, EventType } from '@seatwell/contract';
import { ACTIONS, type Action, actionFor, CATALOGUE } from '@seatwell/workflow';
import { allows, type ReachTarget } from '../../platform/access/allows.ts';
import type { Actor } from '../../platform/sign-in/sessions.ts';

export interface Against {
  readonly code: string;
  readonly message: string;
}

// A check has an action for each level: whoever may check at one of them may check.
const actionsOfType = (type: EventType): readonly Action[] =>
  type === 'checked'
    ? (['self', 'chargehand', 'every'] as const).map((level) => actionFor(type, { level }))
    : [actionFor(type, null)];

function againstRoles(actor: Actor, type: EventType, target: ReachTarget): Against | null {
  const actions = actionsOfType(type);
  if (actions.some((action) => allows(actor, action, target))) return null;
  const roles = [...new Set(actions.flatMap((action) => ACTIONS[action].roles))];
  return {
    code: 'not-allowed',
    message: `To ${ACTIONS[actions[0] as Action].says} takes the role ${roles.join(' or ')} with a reach that covers this.`,
  };
}

/**
 * What the caller may record, in the order asked, each with the reason where not: roles and reach first, then what
 * stands against it in the state of things.
 */
export function actionsOf(
  actor: Actor,
  types: readonly EventType[],
  target: ReachTarget,
  against: (type: EventType) => Against | null = () => null,
): AllowedAction[] {
  return types.map((type) => {
    const reason = againstRoles(actor, type, target) ?? against(type);
    return { type, allowed: reason === null, reason, signed: CATALOGUE[type].signed, kind: CATALOGUE[type].kind };
  });
}
