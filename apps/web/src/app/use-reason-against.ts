import type { Said } from '@seatwell/contract';
import { useCallback } from 'react';
import { useSaid } from './use-said.ts';

/** What the server says of an action: whether it can be taken here, and why not. */
export interface OfferedAction {
  readonly type: string;
  readonly allowed: boolean;
  readonly reason: { readonly code: string; readonly message: string } | null;
}

export type ReasonAgainst = (actions: readonly OfferedAction[], type: string) => string | undefined;

/**
 * Why an action cannot be taken here, in the language of the screen; undefined when it can or is not known.
 * @param byRule words for reasons that are rules, on pages that have the rules
 */
export function useReasonAgainst(byRule?: (said: Said) => string): ReasonAgainst {
  const said = useSaid('problems');
  return useCallback(
    (actions, type) => {
      const action = actions.find((each) => each.type === type);
      if (!action || action.allowed || !action.reason) return undefined;
      const { code, message } = action.reason;
      return said({ code, message: byRule?.({ code, message }) ?? message });
    },
    [said, byRule],
  );
}
