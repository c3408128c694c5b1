import type { ImportState } from '@seatwell/contract';
import { queryOptions } from '@tanstack/react-query';
import { request } from '../../app/api-client.ts';
import { siteKey } from '../../app/query-client.ts';

export const importPath = (shutdownId: string, importId = '', more = '') =>
  `/shutdowns/${shutdownId}/imports${importId === '' ? '' : `/${importId}`}${more}`;

// Apart from the shutdown's key: its rows are as the preview found them, whatever else happens meanwhile.
export const importKey = (importId: string, ...more: readonly unknown[]) => siteKey('imports', importId, ...more);

/** An import as it stands. In a file of its own, since the first page of everybody loads what the addresses need. */
export const importQuery = (shutdownId: string, importId: string) =>
  queryOptions({
    queryKey: importKey(importId),
    queryFn: ({ signal }) => request<ImportState>(importPath(shutdownId, importId), { signal }),
    staleTime: Number.POSITIVE_INFINITY,
  });
