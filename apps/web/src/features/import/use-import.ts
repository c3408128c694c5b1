import type {
  ImportAnswer,
  ImportDraft,
  ImportOutcome,
  ImportPreview,
  ImportProblemsPage,
  ImportRowsPage,
  ImportStarted,
} from '@seatwell/contract';
import { useInfiniteQuery, useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { useRef } from 'react';
import { request, withQuery } from '../../app/api-client.ts';
import { ApiProblem } from '../../app/api-problem.ts';
import { shutdownKey, siteKey } from '../../app/query-client.ts';
import { newId } from '../../app/send-command.ts';
import { sessionQuery } from '../../app/session.ts';
import { useShutdownId } from '../../app/use-shutdown.ts';
import { importKey, importPath } from './import-query.ts';

/** Address of the sample register. */
export const sampleAddress = (shutdownId: string): string => `/api/v1${importPath(shutdownId, 'sample')}`;

export function useUpload() {
  const shutdownId = useShutdownId();
  return useMutation({
    mutationFn: (file: File) => {
      const body = new FormData();
      body.append('file', file, file.name);
      return request<ImportDraft>(importPath(shutdownId), { method: 'POST', body });
    },
  });
}

/** Rows of the preview by what would become of them, page by page. */
export function useImportRows(preview: ImportPreview, kind: ImportOutcome) {
  const shutdownId = useShutdownId();
  return useInfiniteQuery({
    queryKey: importKey(preview.importId, preview.previewId, 'rows', kind),
    queryFn: ({ pageParam, signal }) =>
      request<ImportRowsPage>(
        withQuery(importPath(shutdownId, preview.importId, '/rows'), { kind, cursor: pageParam }),
        {
          signal,
        },
      ),
    initialPageParam: '0',
    getNextPageParam: (page) => page.next,
    staleTime: Number.POSITIVE_INFINITY,
  });
}

/** Cells that are wrong or deserve a look, page by page. */
export function useImportProblems(preview: ImportPreview) {
  const shutdownId = useShutdownId();
  return useInfiniteQuery({
    queryKey: importKey(preview.importId, preview.previewId, 'problems'),
    queryFn: ({ pageParam, signal }) =>
      request<ImportProblemsPage>(
        withQuery(importPath(shutdownId, preview.importId, '/problems'), { cursor: pageParam }),
        {
          signal,
        },
      ),
    initialPageParam: '0',
    getNextPageParam: (page) => page.next,
    staleTime: Number.POSITIVE_INFINITY,
  });
}

/** Confirms what the preview shows. Where no answer came, the same confirmation is sent under the same id again. */
export function useConfirm(preview: ImportPreview) {
  const shutdownId = useShutdownId();
  const kept = useRef<{ said: string; body: object } | null>(null);
  return useMutation({
    mutationFn: async (leaveOutRowsInError: boolean) => {
      const said = `${preview.previewId} ${leaveOutRowsInError}`;
      if (kept.current?.said !== said) {
        const body = {
          eventId: newId(),
          previewId: preview.previewId,
          leaveOutRowsInError,
          deviceTime: new Date().toISOString(),
          device: navigator.userAgent.slice(0, 120),
        };
        kept.current = { said, body };
      }
      try {
        const body = kept.current.body;
        return await request<ImportStarted>(importPath(shutdownId, preview.importId, '/confirm'), {
          method: 'POST',
          body,
        });
      } catch (error) {
        if (error instanceof ApiProblem && error.code !== 'no-answer') kept.current = null;
        throw error;
      }
    },
  });
}

interface ProblemOfJob {
  readonly problem: { readonly type?: string; readonly title: string; readonly detail: string; readonly errors: [] };
}

export interface ImportJob {
  readonly state: 'waiting' | 'running' | 'done' | 'failed';
  readonly done: number;
  readonly total: number;
  readonly result: ImportAnswer | ProblemOfJob | null;
}

/** How far the import is; asked again until it has ended, then everything of the shutdown is made fresh. */
export function useImportJob(jobId: string | undefined) {
  const shutdownId = useShutdownId();
  const queries = useQueryClient();
  return useQuery({
    queryKey: siteKey('import-job', jobId),
    enabled: jobId !== undefined,
    queryFn: async ({ signal }) => {
      const job = await request<ImportJob>(`/jobs/${jobId}`, { signal });
      if (job.state === 'done') {
        await queries.invalidateQueries({ queryKey: shutdownKey(shutdownId) });
        await queries.invalidateQueries({ queryKey: sessionQuery.queryKey });
      }
      return job;
    },
    refetchInterval: ({ state }) => (state.data?.state === 'done' || state.data?.state === 'failed' ? false : 500),
  });
}
