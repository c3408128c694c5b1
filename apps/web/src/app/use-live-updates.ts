import { useQueryClient } from '@tanstack/react-query';
import { useEffect } from 'react';
import { listenToHeads } from './live-updates.ts';
import { shutdownKey } from './query-client.ts';

// Heads come in bursts (an import, a shift that signs off): the screens are made fresh once for a burst.
const calm_ms = 200;

/** Makes the screens of a shutdown fresh when somebody records something. */
export function useLiveUpdates(shutdownId: string | undefined): void {
  const queries = useQueryClient();
  useEffect(() => {
    if (shutdownId === undefined) return;
    let known = -1;
    let timer: ReturnType<typeof setTimeout> | undefined;
    const refresh = () => {
      timer = undefined;
      void queries.invalidateQueries({ queryKey: shutdownKey(shutdownId) });
    };
    const stop = listenToHeads(shutdownId, ({ version }) => {
      const first = known === -1;
      if (version === known) return;
      known = version;
      if (!first) timer ??= setTimeout(refresh, calm_ms);
    });
    return () => {
      clearTimeout(timer);
      stop();
    };
  }, [shutdownId, queries]);
}
