import type { JointRow, RegisterAnswer, SelectionAnswer } from '@seatwell/contract';
import { keepPreviousData, useInfiniteQuery } from '@tanstack/react-query';
import { useCallback, useMemo } from 'react';
import { request, withQuery } from '../../app/api-client.ts';
import { shutdownKey } from '../../app/query-client.ts';
import { filtersOf, type RegisterSearch } from './register-search.ts';

// The first page comes quickly; who scrolls on is served in larger ones.
const firstPage = 100;
const furtherPage = 300;
// The bar of the table reaches this far beyond what is loaded: nobody waits for a hundred thousand rows by a slip.
const rowsAhead = 1500;

export interface Register {
  readonly rows: readonly JointRow[];
  /** rows that the table offers to scroll through for now */
  readonly rowCount: number;
  readonly found: { readonly count: number; readonly exact: boolean } | undefined;
  readonly registerTotal: number | undefined;
  readonly withoutTarget: number | undefined;
  readonly foundJoints: number | undefined;
  readonly loading: boolean;
  /** rows of the list before are shown until the new ones are here */
  readonly stale: boolean;
  readonly error: unknown;
  readonly needMore: () => void;
  readonly retry: () => void;
}

/** The joints behind the address, page after page; while another list is on its way, the old rows stay. */
export function useRegister(shutdownId: string, search: RegisterSearch): Register {
  const query = useInfiniteQuery({
    queryKey: shutdownKey(shutdownId, 'register', search),
    queryFn: ({ pageParam, signal }) =>
      request<RegisterAnswer>(
        withQuery(`/shutdowns/${shutdownId}/joints`, {
          ...search,
          limit: pageParam === null ? firstPage : furtherPage,
          cursor: pageParam,
        }),
        { signal },
      ),
    initialPageParam: null as string | null,
    getNextPageParam: (last) => last.next,
    placeholderData: keepPreviousData,
  });
  const { data, hasNextPage, isFetchingNextPage, fetchNextPage, refetch } = query;
  const rows = useMemo(() => data?.pages.flatMap((page) => page.rows) ?? [], [data]);
  const first = data?.pages[0];
  const needMore = useCallback(() => {
    if (hasNextPage && !isFetchingNextPage) void fetchNextPage();
  }, [hasNextPage, isFetchingNextPage, fetchNextPage]);
  const found = first?.total ?? undefined;
  const ahead = found?.exact ? Math.min(found.count, rows.length + rowsAhead) : rows.length + rowsAhead;
  return {
    rows,
    rowCount: hasNextPage ? ahead : rows.length,
    found,
    registerTotal: first?.registerTotal ?? undefined,
    withoutTarget: first?.withoutTarget ?? undefined,
    foundJoints: first?.foundCount ?? undefined,
    loading: query.isPending,
    stale: query.isPlaceholderData,
    error: query.error,
    needMore,
    retry: () => void refetch(),
  };
}

/** All joints behind the filters, as a list command needs them. */
export function fetchSelection(shutdownId: string, search: RegisterSearch): Promise<SelectionAnswer> {
  return request<SelectionAnswer>(withQuery(`/shutdowns/${shutdownId}/joints/selection`, { ...filtersOf(search) }));
}
