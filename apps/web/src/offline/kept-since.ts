import { useSyncExternalStore } from 'react';

let since: string | null = null;
const listeners = new Set<() => void>();

/** Takes note of an answer that came from this device (the time it was read) or from the server (null). */
export function noteKept(readAt: string | null): void {
  if (since === readAt) return;
  since = readAt;
  for (const listener of listeners) listener();
}

const subscribe = (listener: () => void) => {
  listeners.add(listener);
  return () => listeners.delete(listener);
};

/** When what is seen was read, where it comes from this device; null while the server answers. */
export const useKeptSince = (): string | null => useSyncExternalStore(subscribe, () => since);
