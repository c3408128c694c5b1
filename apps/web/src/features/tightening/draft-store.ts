import { emptyDraft, type TighteningDraft } from './draft.ts';

const keyOf = (makeId: string) => `seatwell.tightening.${makeId}`;

/** What this device keeps of a make: survives a reload, a flat battery and a closed tab. */
export function readDraft(makeId: string): TighteningDraft {
  try {
    const kept = localStorage.getItem(keyOf(makeId));
    const draft = kept === null ? emptyDraft : (JSON.parse(kept) as TighteningDraft);
    return draft.v === 1 ? draft : emptyDraft;
  } catch {
    return emptyDraft;
  }
}

/** @returns whether it could be kept: where storage is off, the screen says so */
export function writeDraft(makeId: string, draft: TighteningDraft): boolean {
  try {
    if (draft === emptyDraft) localStorage.removeItem(keyOf(makeId));
    else localStorage.setItem(keyOf(makeId), JSON.stringify(draft));
    return true;
  } catch {
    return false;
  }
}

/** Makes whose tightening this device has begun or has still to send. */
export function makesWithDrafts(): ReadonlySet<string> {
  const found = new Set<string>();
  try {
    for (let index = 0; index < localStorage.length; index++) {
      const key = localStorage.key(index);
      if (!key?.startsWith(keyOf(''))) continue;
      const makeId = key.slice(keyOf('').length);
      const draft = readDraft(makeId);
      if (draft.running || draft.waiting.length > 0) found.add(makeId);
    }
  } catch {
    return found;
  }
  return found;
}
