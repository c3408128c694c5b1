import { useSyncExternalStore } from 'react';

let ended = false;
const listeners = new Set<() => void>();

function change(next: boolean): void {
  if (ended === next) return;
  ended = next;
  for (const listener of listeners) listener();
}

/** An answer said that the session is over: the page stays as it is, and asks for the password again. */
export const sayEnded = (): void => change(true);
/** Somebody is signed in again, or leaves. */
export const clearEnded = (): void => change(false);

const subscribe = (listener: () => void) => {
  listeners.add(listener);
  return () => listeners.delete(listener);
};

/** Whether the session of the person on this page is over. */
export const useSessionEnded = (): boolean => useSyncExternalStore(subscribe, () => ended);
