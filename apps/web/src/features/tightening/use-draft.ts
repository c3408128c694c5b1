import { useCallback, useEffect, useReducer, useState } from 'react';
import { type DraftAction, emptyDraft, reduceDraft, type TighteningDraft } from './draft.ts';
import { readDraft, writeDraft } from './draft-store.ts';

/** The tightening of a make as this device keeps it. */
export function useDraft(makeId: string): {
  draft: TighteningDraft;
  change: (action: DraftAction) => void;
  /** false where the device has no storage: a reload would lose the taps */
  kept: boolean;
} {
  const [draft, change] = useReducer(reduceDraft, makeId, readDraft);
  const [kept, setKept] = useState(true);
  useEffect(() => {
    const blank = draft.running === null && draft.waiting.length === 0 && draft.lastTools === null;
    setKept(writeDraft(makeId, blank ? emptyDraft : draft));
  }, [makeId, draft]);
  return { draft, change: useCallback((action) => change(action), []), kept };
}
