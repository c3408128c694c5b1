import type { CommandAnswer } from '@seatwell/contract';
import { useQueryClient } from '@tanstack/react-query';
import { useCallback, useEffect, useRef, useState } from 'react';
import { request } from '../../app/api-client.ts';
import { ApiProblem } from '../../app/api-problem.ts';
import { shutdownKey } from '../../app/query-client.ts';
import { type DraftAction, isInReview, type TighteningDraft, type WaitingFact } from './draft.ts';

const again_ms = 10_000;

export interface Sender {
  /** sending now, or no answer came and it is tried again */
  readonly state: 'idle' | 'sending' | 'no-answer' | 'refused';
  readonly error: unknown;
  /** forgets a refusal: the fact was withdrawn or changed */
  readonly clear: () => void;
}

/**
 * Sends what was said to be done, in order, each under its own id until an answer comes: at once, when the network
 * is back, and every ten seconds. A refusal stops the line: what follows was done on top of it.
 */
export function useSender(
  subject: { readonly shutdownId: string; readonly jointId: string; readonly makeId: string },
  draft: TighteningDraft,
  change: (action: DraftAction) => void,
  onReview: () => void,
): Sender {
  const queries = useQueryClient();
  const [state, setState] = useState<Sender['state']>('idle');
  const [error, setError] = useState<unknown>();
  const busy = useRef(false);
  const first = draft.waiting[0];
  const { shutdownId, jointId, makeId } = subject;

  const send = useCallback(async () => {
    if (!first || busy.current) return;
    busy.current = true;
    setState('sending');
    try {
      const answer = await request<CommandAnswer>(`/shutdowns/${shutdownId}/commands/${first.type}`, {
        method: 'POST',
        body: commandOf(first, jointId, makeId),
      });
      if (isInReview(answer)) onReview();
      await queries.invalidateQueries({ queryKey: shutdownKey(shutdownId) });
      setError(undefined);
      setState('idle');
      change({ kind: 'recorded', eventId: first.eventId });
    } catch (failure) {
      const silent = failure instanceof ApiProblem && (failure.code === 'no-answer' || failure.status >= 500);
      setState(silent ? 'no-answer' : 'refused');
      setError(silent ? undefined : failure);
    } finally {
      busy.current = false;
    }
  }, [first, shutdownId, jointId, makeId, queries, change, onReview]);

  useEffect(() => {
    if (first) void send();
  }, [first, send]);

  useEffect(() => {
    if (state !== 'no-answer') return;
    const retry = () => void send();
    const timer = setInterval(retry, again_ms);
    window.addEventListener('online', retry);
    return () => {
      clearInterval(timer);
      window.removeEventListener('online', retry);
    };
  }, [state, send]);

  const clear = useCallback(() => {
    setState('idle');
    setError(undefined);
  }, []);
  return { state: first ? state : 'idle', error, clear };
}

/** The command as it is sent at every try: nothing in it is taken from the moment of the try. */
function commandOf(fact: WaitingFact, jointId: string, makeId: string) {
  return {
    eventId: fact.eventId,
    v: 1,
    subjectId: jointId,
    makeId,
    deviceTime: fact.at,
    clockOffset_ms: fact.clockOffset_ms,
    device: navigator.userAgent.slice(0, 120),
    performedBy: fact.performedBy,
    versionSeen: null,
    alreadyDone: fact.alreadyDone,
    signature: null,
    payload: fact.payload,
  };
}
