import type { ShutdownEventType, ShutdownPayload, SiteEventType, SitePayload } from '@seatwell/contract';
import { useMutation, useQueryClient } from '@tanstack/react-query';
import { useRef } from 'react';
import { ApiProblem } from './api-problem.ts';
import { shutdownKey, siteKey } from './query-client.ts';
import { type CommandInput, type ListInput, newId, sendCommand, sendList, sendSiteCommand } from './send-command.ts';
import { useShutdownId } from './use-shutdown.ts';

/**
 * Records an event of the shutdown in the address and makes its screens fresh. Where no answer came, the same
 * content is sent under the same id again, so that nothing is recorded twice.
 */
export function useCommand<T extends ShutdownEventType>(type: T) {
  const shutdownId = useShutdownId();
  const keepId = useKeptId();
  const queries = useQueryClient();
  return useMutation({
    mutationFn: (input: CommandInput<ShutdownPayload<T>>) =>
      keepId(input, (eventId) => sendCommand(shutdownId, type, { ...input, eventId })),
    onSuccess: () => queries.invalidateQueries({ queryKey: shutdownKey(shutdownId) }),
  });
}

/** Records one decision over a list of joints of the shutdown in the address. */
export function useListCommand<T extends ShutdownEventType>(type: T) {
  const shutdownId = useShutdownId();
  const keepId = useKeptId();
  const queries = useQueryClient();
  return useMutation({
    mutationFn: (input: ListInput<ShutdownPayload<T>>) =>
      keepId(input, (eventId) => sendList(shutdownId, type, { ...input, eventId })),
    onSuccess: () => queries.invalidateQueries({ queryKey: shutdownKey(shutdownId) }),
  });
}

/** Records an event of the site: people, tools, procedures, engineering data. */
export function useSiteCommand<T extends SiteEventType>(type: T) {
  const keepId = useKeptId();
  const queries = useQueryClient();
  return useMutation({
    mutationFn: (input: CommandInput<SitePayload<T>>) =>
      keepId(input, (eventId) => sendSiteCommand(type, { ...input, eventId })),
    onSuccess: () =>
      Promise.all([
        queries.invalidateQueries({ queryKey: siteKey() }),
        queries.invalidateQueries({ queryKey: ['shutdown'] }),
        queries.invalidateQueries({ queryKey: ['session'] }),
      ]),
  });
}

function useKeptId() {
  const kept = useRef<{ content: string; eventId: string } | null>(null);
  return async <Answer>(
    input: { readonly eventId?: string },
    send: (eventId: string) => Promise<Answer>,
  ): Promise<Answer> => {
    const content = JSON.stringify(input);
    const eventId = input.eventId ?? (kept.current?.content === content ? kept.current.eventId : newId());
    try {
      const answer = await send(eventId);
      kept.current = null;
      return answer;
    } catch (error) {
      const unanswered = error instanceof ApiProblem && error.code === 'no-answer';
      kept.current = unanswered ? { content, eventId } : null;
      throw error;
    }
  };
}
