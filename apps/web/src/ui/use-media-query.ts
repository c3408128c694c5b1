import { useCallback, useSyncExternalStore } from 'react';

/** Whether the media query holds now; follows changes. */
export function useMediaQuery(query: string): boolean {
  const subscribe = useCallback(
    (changed: () => void) => {
      const list = window.matchMedia(query);
      list.addEventListener('change', changed);
      return () => list.removeEventListener('change', changed);
    },
    [query],
  );
  return useSyncExternalStore(subscribe, () => window.matchMedia(query).matches);
}

/** The width below which a page is laid out for a phone: keep equal to the style sheets. Paper is never a phone. */
export const phoneQuery = 'screen and (max-width: 48rem)';
