import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { signedInRoute } from './signed-in.ts';

export const shutdownsRoute = createRoute({
  getParentRoute: () => signedInRoute,
  path: '/shutdowns',
  component: lazyRouteComponent(() => import('../features/session/shutdowns-page.tsx'), 'ShutdownsPage'),
});
