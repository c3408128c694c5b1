import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { importQuery } from '../features/import/import-query.ts';
import { shutdownRoute } from './shutdown.ts';

export const importRoute = createRoute({
  getParentRoute: () => shutdownRoute,
  path: '/import',
  validateSearch: (search: Record<string, unknown>): { import?: string } =>
    typeof search.import === 'string' ? { import: search.import } : {},
  loaderDeps: ({ search }) => ({ importId: search.import }),
  loader: ({ context, params, deps }) =>
    deps.importId === undefined
      ? undefined
      : context.queries.ensureQueryData(importQuery(params.shutdownId, deps.importId)),
  component: lazyRouteComponent(() => import('../features/import/import-page.tsx'), 'ImportPage'),
});
