import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { choicesQuery, shutdownQuery } from '../app/reads.ts';
import { shutdownRoute } from './shutdown.ts';

export const setupRoute = createRoute({
  getParentRoute: () => shutdownRoute,
  path: '/setup',
  loader: ({ context: { queries }, params: { shutdownId } }) =>
    Promise.all([
      queries.ensureQueryData(shutdownQuery(shutdownId)),
      queries.ensureQueryData(choicesQuery(shutdownId)),
    ]),
  component: lazyRouteComponent(() => import('../features/shutdown-setup/setup-page.tsx'), 'SetupPage'),
});
