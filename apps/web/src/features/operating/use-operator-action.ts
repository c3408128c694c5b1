import { useMutation, useQueryClient } from '@tanstack/react-query';
import { type ApiRequest, request } from '../../app/api-client.ts';
import { operatorStatusQuery } from '../../app/reads.ts';

interface OperatorAction {
  /** below /operator */
  readonly path: string;
  readonly method?: ApiRequest['method'];
  readonly body?: unknown;
}

/** Does something of the operator's and reads the page again. */
export function useOperatorAction() {
  const queries = useQueryClient();
  return useMutation({
    mutationFn: ({ path, method = 'POST', body }: OperatorAction) =>
      request<unknown>(`/operator${path}`, { method, body }),
    onSettled: () => queries.invalidateQueries({ queryKey: operatorStatusQuery.queryKey }),
  });
}
