import { MutationCache, QueryCache, QueryClient } from '@tanstack/react-query';
import { ApiProblem, isSessionEnd } from './api-problem.ts';

/** Query keys: everything of a shutdown hangs under one key, so that one event makes all of it fresh. */
export const shutdownKey = (shutdownId: string, ...more: readonly unknown[]) => ['shutdown', shutdownId, ...more];
/** People, tools, procedures and other things of the site. */
export const siteKey = (...more: readonly unknown[]) => ['site', ...more];

/** @param onSessionEnd called when an answer says that nobody is signed in any more */
export function createQueryClient(onSessionEnd: () => void): QueryClient {
  const onError = (error: unknown) => {
    if (isSessionEnd(error)) onSessionEnd();
  };
  return new QueryClient({
    queryCache: new QueryCache({ onError }),
    mutationCache: new MutationCache({ onError }),
    defaultOptions: {
      // Whether there is a connection is found out by asking: what a device says of it is often wrong.
      mutations: { networkMode: 'always' },
      queries: {
        networkMode: 'always',
        staleTime: 15_000,
        // A refusal stays a refusal; only silence and a busy server are worth another try.
        retry: (count, error) =>
          count < 2 && error instanceof ApiProblem && (error.code === 'no-answer' || error.status === 503),
      },
    },
  });
}
