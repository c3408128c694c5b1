import { useQuery } from '@tanstack/react-query';
import { request } from './api-client.ts';

/** Work that the server does behind the answer, as `GET /jobs/:jobId` tells it. */
export interface ServerJob<Result> {
  readonly state: 'waiting' | 'running' | 'done' | 'failed';
  readonly done: number;
  readonly total: number;
  /** of a job that is done */
  readonly result: Result;
}

const again_ms = 700;

/** How far a job is; asked again until it has ended. */
export function useServerJob<Result>(jobId: string | null | undefined) {
  return useQuery({
    queryKey: ['job', jobId],
    queryFn: ({ signal }) => request<ServerJob<Result>>(`/jobs/${jobId}`, { signal }),
    enabled: jobId !== null && jobId !== undefined,
    refetchInterval: ({ state }) => (state.data?.state === 'done' || state.data?.state === 'failed' ? false : again_ms),
  });
}

/** Why a job ended early, as the server says; undefined where it does not say. */
export function whyFailed({ result }: ServerJob<unknown>): string | undefined {
  const { problem } = (result ?? {}) as { problem?: { detail?: string; title?: string } };
  return problem?.detail ?? problem?.title;
}
