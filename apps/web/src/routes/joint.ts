import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { choicesQuery, jointQuery } from '../app/reads.ts';
import { loadTexts } from '../texts/translate.ts';
import { shutdownRoute } from './shutdown.ts';

export const jointRoute = createRoute({
  getParentRoute: () => shutdownRoute,
  path: '/joints/$jointId',
  loader: ({ context: { queries }, params: { shutdownId, jointId } }) =>
    Promise.all([
      loadTexts('joint', 'register', 'engineering'),
      queries.ensureQueryData(jointQuery(shutdownId, jointId)),
      queries.ensureQueryData(choicesQuery(shutdownId)),
    ]),
  component: lazyRouteComponent(() => import('../features/joint/joint-page.tsx'), 'JointPage'),
});
