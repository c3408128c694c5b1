import { useQueryClient } from '@tanstack/react-query';
import { useEffect, useMemo, useSyncExternalStore } from 'react';
import { shutdownKey } from '../app/query-client.ts';
import { useMe } from '../app/session.ts';
import { useText } from '../texts/text-provider.tsx';
import { useAnnouncer } from '../ui/toast.tsx';
import { type OutboxState, outbox } from './outbox.ts';
import type { QueuedFact } from './queued-fact.ts';

/** What waits on this device, and whether it is on its way. */
export const useOutbox = (): OutboxState => useSyncExternalStore(outbox.subscribe, outbox.state);

/** What this device has said about a joint and the record has not got yet, in order. */
export function useQueuedOn(lane: string): readonly QueuedFact[] {
  const { facts, inHand } = useOutbox();
  return useMemo(() => facts.filter((fact) => fact.lane === lane && !inHand.has(fact.eventId)), [facts, inHand, lane]);
}

/** Sends what the person has left on this device: at sign-in, when the network is back, and every ten seconds. */
export function useOutboxAtWork(): void {
  const text = useText('offline');
  const { accountId } = useMe();
  const queries = useQueryClient();
  const { toast } = useAnnouncer();
  useEffect(() => {
    outbox.onRecorded = (fact, answer) => {
      if (answer.disposition === 'needs-review') toast({ message: text('kept-for-review', { label: fact.label }) });
      return queries.invalidateQueries({ queryKey: shutdownKey(fact.shutdownId) });
    };
  }, [queries, toast, text]);
  useEffect(() => {
    void outbox.open(accountId);
    const retry = () => outbox.retryNow();
    window.addEventListener('online', retry);
    return () => {
      window.removeEventListener('online', retry);
      outbox.close();
    };
  }, [accountId]);
}
