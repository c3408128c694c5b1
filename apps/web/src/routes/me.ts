import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { signedInRoute } from './signed-in.ts';

export const meRoute = createRoute({
  getParentRoute: () => signedInRoute,
  path: '/me',
  component: lazyRouteComponent(() => import('../features/session/me-page.tsx'), 'MePage'),
});
