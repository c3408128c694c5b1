import { useRouter } from '@tanstack/react-router';
import { useCallback } from 'react';

/** Goes to an address: `go(addresses.joint(…))`; with `replace` the page left is not kept in the history. */
export function useGo(): (href: string, how?: { replace?: boolean }) => void {
  const router = useRouter();
  return useCallback(
    (href, how) => (how?.replace ? router.history.replace(href) : router.history.push(href)),
    [router],
  );
}
