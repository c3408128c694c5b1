import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { jointQuery } from '../app/reads.ts';
import { loadTexts } from '../texts/translate.ts';
import { shutdownRoute } from './shutdown.ts';

export const targetRoute = createRoute({
  getParentRoute: () => shutdownRoute,
  path: '/joints/$jointId/target',
  loader: ({ context, params }) =>
    Promise.all([
      loadTexts('engineering', 'joint'),
      context.queries.ensureQueryData(jointQuery(params.shutdownId, params.jointId)),
    ]),
  component: lazyRouteComponent(() => import('../features/engineering/target-page.tsx'), 'TargetPage'),
});
