import type { Me, Preferences } from '@seatwell/contract';
import { queryOptions, useMutation, useQueryClient, useSuspenseQuery } from '@tanstack/react-query';
import { request } from './api-client.ts';
import { isSessionEnd } from './api-problem.ts';
import { clearEnded } from './session-end.ts';

/** The person who is signed in, or null. */
export const sessionQuery = queryOptions({
  queryKey: ['session'],
  queryFn: async ({ signal, client }): Promise<Me | null> => {
    try {
      const me = await request<Me>('/session', { signal });
      clearEnded();
      return me;
    } catch (error) {
      if (!isSessionEnd(error)) throw error;
      // Who was signed in on this page stays known, so that it can ask for the password again where it stands.
      return client.getQueryData<Me | null>(['session']) ?? null;
    }
  },
  staleTime: 60_000,
});

/** The person who is signed in. Only below the shell, which stands for somebody being signed in. */
export function useMe(): Me {
  const { data } = useSuspenseQuery(sessionQuery);
  if (!data) throw new Error('useMe was used where nobody is signed in.');
  return data;
}

/** Whether some reach of the person's roles allows an action; the server decides for the joint at hand. */
export function useMay(): (action: string) => boolean {
  const { actions } = useMe();
  return (action) => actions.includes(action);
}

/** Keeps a choice with the account, so that it is the same on the next device. */
export function useSavePreferences() {
  const queries = useQueryClient();
  return useMutation({
    mutationFn: (chosen: Preferences) => request<Me>('/session/preferences', { method: 'PUT', body: chosen }),
    onSuccess: (me) => queries.setQueryData(sessionQuery.queryKey, me),
  });
}
