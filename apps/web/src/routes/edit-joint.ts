import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { choicesQuery, jointQuery } from '../app/reads.ts';
import { shutdownRoute } from './shutdown.ts';

export const editJointRoute = createRoute({
  getParentRoute: () => shutdownRoute,
  path: '/joints/$jointId/edit',
  loader: ({ context: { queries }, params: { shutdownId, jointId } }) =>
    Promise.all([
      queries.ensureQueryData(jointQuery(shutdownId, jointId)),
      queries.ensureQueryData(choicesQuery(shutdownId)),
    ]),
  component: lazyRouteComponent(() => import('../features/register/edit-joint-page.tsx'), 'EditJointPage'),
});
