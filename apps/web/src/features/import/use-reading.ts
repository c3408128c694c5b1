import type { ImportChoicesInput, ImportReading, ImportState } from '@seatwell/contract';
import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { request } from '../../app/api-client.ts';
import { ApiProblem, problemIn } from '../../app/api-problem.ts';
import { siteKey } from '../../app/query-client.ts';
import { useShutdownId } from '../../app/use-shutdown.ts';
import { importPath, importQuery } from './import-query.ts';
import type { ImportJob } from './use-import.ts';

const again_ms = 250;

export interface Reading {
  readonly read: (choices: ImportChoicesInput) => void;
  /** takes it back: the preview before it stays */
  readonly giveUp: () => void;
  readonly underWay: boolean;
  /** rows done of all rows; undefined before they are counted */
  readonly progress: { readonly done: number; readonly total: number } | undefined;
  readonly error: unknown;
}

/**
 * Reads the file with other choices behind the answer. Which reading is under way is part of the import's state, so
 * that a reload or another tab finds it again; its preview takes the place of the one there was.
 */
export function useReading({ importId, readingJobId }: Pick<ImportState, 'importId' | 'readingJobId'>): Reading {
  const shutdownId = useShutdownId();
  const queries = useQueryClient();
  const { queryKey, queryFn } = importQuery(shutdownId, importId);
  const note = (jobId: string | null) =>
    queries.setQueryData(queryKey, (known) => known && { ...known, readingJobId: jobId });
  // Nobody asks any more for a reading that is taken back: the server knows it no more.
  const leave = async () => {
    await queries.cancelQueries({ queryKey: siteKey('import-reading') });
    note(null);
  };
  const start = useMutation({
    onMutate: leave,
    mutationFn: (body: ImportChoicesInput) =>
      request<ImportReading>(importPath(shutdownId, importId, '/readings'), { method: 'POST', body }),
    onSuccess: ({ jobId }) => note(jobId),
  });
  const giveUp = useMutation({
    onMutate: leave,
    mutationFn: () => request<void>(importPath(shutdownId, importId, '/readings'), { method: 'DELETE' }),
    onError: () => queries.invalidateQueries({ queryKey }),
  });
  const job = useQuery({
    queryKey: siteKey('import-reading', readingJobId),
    enabled: readingJobId !== null,
    queryFn: async ({ signal }) => {
      const asked = await request<ImportJob>(`/jobs/${readingJobId}`, { signal }).catch((error: unknown) => {
        // Given up in another tab.
        if (error instanceof ApiProblem && error.code === 'not-found') return null;
        throw error;
      });
      if (asked === null || asked.state === 'done')
        await queries.fetchQuery({ queryKey, ...(queryFn ? { queryFn } : {}), staleTime: 0 });
      return asked;
    },
    refetchInterval: ({ state }) => (ended(state.data) ? false : again_ms),
  });
  const refused = job.data?.state === 'failed' ? job.data.result : null;
  return {
    read: (choices) => start.mutate(choices),
    giveUp: () => giveUp.mutate(),
    underWay: start.isPending || (readingJobId !== null && !ended(job.data)),
    progress: job.data && job.data.total > 0 ? job.data : undefined,
    error:
      start.error ??
      giveUp.error ??
      (refused && 'problem' in refused ? problemIn(refused.problem, { status: 0, statusText: '' }) : job.error),
  };
}

const ended = (job: ImportJob | null | undefined): boolean =>
  job === null || job?.state === 'done' || job?.state === 'failed';
