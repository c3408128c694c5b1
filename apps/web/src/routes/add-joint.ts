import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { choicesQuery } from '../app/reads.ts';
import { shutdownRoute } from './shutdown.ts';

export const addJointRoute = createRoute({
  getParentRoute: () => shutdownRoute,
  path: '/register/add',
  loader: ({ context, params }) => context.queries.ensureQueryData(choicesQuery(params.shutdownId)),
  component: lazyRouteComponent(() => import('../features/register/add-joint-page.tsx'), 'AddJointPage'),
});
