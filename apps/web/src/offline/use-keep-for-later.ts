import { useQueryClient } from '@tanstack/react-query';
import { useEffect } from 'react';
import { addresses } from '../app/addresses.ts';
import { choicesQuery, crewsQuery, jointQuery, proceduresQuery, shutdownQuery, toolsQuery } from '../app/reads.ts';

const mostJoints = 25;

/**
 * Reads ahead what a person works with, so that it is on the device when the signal is gone: their joints with the
 * sheets, tools, procedures and crews. One after the other, so that nobody else waits for it.
 * @param joints theirs, with what changes when the joint does
 */
export function useKeepForLater(
  shutdownId: string,
  joints: readonly { readonly jointId: string; readonly stage: string }[],
): void {
  const queries = useQueryClient();
  const wanted = joints
    .slice(0, mostJoints)
    .map(({ jointId, stage }) => `${jointId} ${stage}`)
    .join();
  useEffect(() => {
    // Where no service worker stands in front of the app, nothing would be kept.
    if (!navigator.serviceWorker?.controller) return;
    const stop = new AbortController();
    const readAhead = async () => {
      await queries.prefetchQuery(shutdownQuery(shutdownId));
      await queries.prefetchQuery(choicesQuery(shutdownId));
      await queries.prefetchQuery(crewsQuery(shutdownId));
      await queries.prefetchQuery(toolsQuery);
      await queries.prefetchQuery(proceduresQuery);
      for (const jointId of wanted.split(',').map((each) => each.split(' ')[0])) {
        if (stop.signal.aborted || !jointId) return;
        await queries.prefetchQuery(jointQuery(shutdownId, jointId));
        await fetch(addresses.sheet(shutdownId, jointId), { signal: stop.signal, priority: 'low' });
      }
    };
    // Without signal there is nothing to read ahead; what was read before stays.
    const timer = setTimeout(() => readAhead().catch(() => undefined), 1_000);
    return () => {
      clearTimeout(timer);
      stop.abort();
    };
  }, [queries, shutdownId, wanted]);
}
