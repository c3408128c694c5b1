import type { JointRow, RegisterAnswer, SelectionAnswer } from '@seatwell/contract';
import { keepPreviousData, type QueryClient, useQueries, useQuery, useQueryClient } from '@tanstack/react-query';
import { useCallback, useMemo, useState } from 'react';
import { request, withQuery } from '../../app/api-client.ts';
import { shutdownKey } from '../../app/query-client.ts';
import { type Blocks, blockRows, blocksOf, rowCountOf, rowsOf } from './register-blocks.ts';
import { filtersOf, type RegisterSearch } from './register-search.ts';

export interface Register {
  /** the rows at their places; undefined = not loaded */
  readonly rows: readonly (JointRow | undefined)[];
  /** the rows that are loaded, block by block */
  readonly loaded: readonly (readonly JointRow[])[];
  readonly found: { readonly count: number; readonly exact: boolean } | undefined;
  readonly registerTotal: number | undefined;
  readonly withoutTarget: number | undefined;
  readonly foundJoints: number | undefined;
  readonly loading: boolean;
  /** rows of the list before are shown until the new ones are here */
  readonly stale: boolean;
  readonly error: unknown;
  /** the table says which rows are in sight */
  readonly onShown: (first: number, last: number) => void;
}

// Asked for before they come into sight.
const rowsAround = 50;

const blockKey = (shutdownId: string, search: RegisterSearch, ...block: readonly number[]) =>
  shutdownKey(shutdownId, 'register', search, ...block);

/**
 * A block of the list. Behind a block that is known it goes on by the cursor, which costs the same at any depth;
 * after a jump the server counts its way to the place.
 */
function blockQuery(queries: QueryClient, shutdownId: string, search: RegisterSearch, block: number) {
  const before = () => queries.getQueryState<RegisterAnswer>(blockKey(shutdownId, search, block - 1));
  return {
    queryKey: blockKey(shutdownId, search, block),
    queryFn: ({ signal }: { signal: AbortSignal }) => {
      const known = before();
      const cursor = known?.isInvalidated === false ? known.data?.next : undefined;
      const place = cursor ? { cursor } : { from: block === 0 ? undefined : block * blockRows };
      const query = { ...search, limit: blockRows, ...place };
      return request<RegisterAnswer>(withQuery(`/shutdowns/${shutdownId}/joints`, query), { signal });
    },
  };
}

/**
 * The joints behind the address. Only the blocks in sight are asked for, and only they are made fresh when somebody
 * records something; the others keep their rows until they come into sight. While another list is on its way, the old
 * rows stay.
 */
export function useRegister(shutdownId: string, search: RegisterSearch): Register {
  const queries = useQueryClient();
  const [wanted, setWanted] = useState<readonly number[]>([]);
  const head = useQuery({ ...blockQuery(queries, shutdownId, search, 0), placeholderData: keepPreviousData });
  const stale = head.isPlaceholderData;
  const first = head.data;
  const found = first?.total ?? undefined;
  const exists = (block: number) => !found?.exact || block * blockRows < found.count;
  const parts = useQueries({
    queries: (stale || !head.data ? [] : wanted.filter(exists)).map((block) =>
      blockQuery(queries, shutdownId, search, block),
    ),
    combine: (results) => ({
      error: results.find((result) => result.error)?.error,
      // Changes whenever one of them has other rows.
      seen: results.map((result) => result.dataUpdatedAt).join(' '),
    }),
  });
  const listKey = JSON.stringify(search);
  // biome-ignore lint/correctness/useExhaustiveDependencies: what the cache holds changes with `seen`
  const known = useMemo((): Blocks => {
    if (!first) return new Map();
    const kept = new Map<number, RegisterAnswer>([[0, first]]);
    if (stale) return kept;
    // A key matches those that say more as well: other filters are another list.
    for (const [key, answer] of queries.getQueriesData<RegisterAnswer>({ queryKey: blockKey(shutdownId, search) }))
      if (answer && JSON.stringify(key.at(-2)) === listKey) kept.set(Number(key.at(-1)), answer);
    return kept;
  }, [first, stale, parts.seen, queries, shutdownId, listKey]);
  const rowCount = stale ? (first?.rows.length ?? 0) : rowCountOf(found, known);
  const rows = useMemo(() => rowsOf(known, rowCount), [known, rowCount]);
  const loaded = useMemo(() => [...known.values()].map((answer) => answer.rows), [known]);
  const onShown = useCallback((from: number, to: number) => {
    const next = blocksOf(from - rowsAround, to + rowsAround).filter((block) => block > 0);
    setWanted((now) => (now.join() === next.join() ? now : next));
  }, []);
  return {
    rows,
    loaded,
    found,
    registerTotal: first?.registerTotal ?? undefined,
    withoutTarget: first?.withoutTarget ?? undefined,
    foundJoints: first?.foundCount ?? undefined,
    loading: head.isPending,
    stale,
    error: head.error ?? parts.error,
    onShown,
  };
}

/** All joints behind the filters, as a list command needs them. */
export function fetchSelection(shutdownId: string, search: RegisterSearch): Promise<SelectionAnswer> {
  return request<SelectionAnswer>(withQuery(`/shutdowns/${shutdownId}/joints/selection`, { ...filtersOf(search) }));
}
