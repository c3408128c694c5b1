import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { operatorStatusQuery } from '../app/reads.ts';
import { signedInRoute } from './signed-in.ts';

export const operatingRoute = createRoute({
  getParentRoute: () => signedInRoute,
  path: '/site/server',
  loader: ({ context }) => context.queries.ensureQueryData(operatorStatusQuery),
  component: lazyRouteComponent(() => import('../features/operating/operating-page.tsx'), 'OperatingPage'),
});
