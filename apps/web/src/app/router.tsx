import type { QueryClient } from '@tanstack/react-query';
import { createRouter } from '@tanstack/react-router';
import { routeTree } from '../routes/index.ts';
import { Skeleton } from '../ui/skeleton.tsx';
import { ErrorPage, NotFoundPage } from './error-page.tsx';
import { focusTitleOnNavigation } from './page-focus.ts';
import { parseSearch, type SearchValues, writeSearch } from './search-params.ts';

/** The router of the app. */
export function createAppRouter(queries: QueryClient) {
  const router = createRouter({
    routeTree,
    context: { queries },
    parseSearch,
    stringifySearch: (search) => writeSearch(search as SearchValues),
    defaultErrorComponent: ErrorPage,
    defaultNotFoundComponent: NotFoundPage,
    defaultPendingComponent: () => <Skeleton lines={8} />,
    // A page that is slow to load keeps the old one in sight for this long.
    defaultPendingMs: 600,
    defaultPreloadStaleTime: 0,
    scrollRestoration: true,
  });
  focusTitleOnNavigation(router);
  return router;
}

declare module '@tanstack/react-router' {
  interface Register {
    router: ReturnType<typeof createAppRouter>;
  }
}
