import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { shutdownRoute } from './shutdown.ts';

export const myJointsRoute = createRoute({
  getParentRoute: () => shutdownRoute,
  path: '/my-joints',
  component: lazyRouteComponent(() => import('../features/my-joints/my-joints-page.tsx'), 'MyJointsPage'),
});
