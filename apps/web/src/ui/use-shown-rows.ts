import { useEffect, useRef } from 'react';

// A bar that is dragged passes thousands of rows between two frames: not all of them are asked for.
const pause_ms = 60;

/** Tells which rows are in sight, a few times a second while the list is scrolled. */
export function useShownRows(
  shown: readonly { readonly index: number }[],
  onShown: ((first: number, last: number) => void) | undefined,
): void {
  const first = shown[0]?.index ?? 0;
  const last = shown.at(-1)?.index ?? 0;
  const latest = useRef({ first, last, onShown });
  const timer = useRef<ReturnType<typeof setTimeout> | undefined>(undefined);
  useEffect(() => {
    latest.current = { first, last, onShown };
    timer.current ??= setTimeout(() => {
      timer.current = undefined;
      latest.current.onShown?.(latest.current.first, latest.current.last);
    }, pause_ms);
  }, [first, last, onShown]);
  useEffect(
    () => () => {
      clearTimeout(timer.current);
      timer.current = undefined;
    },
    [],
  );
}
