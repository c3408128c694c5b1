import { createRoute, lazyRouteComponent, redirect } from '@tanstack/react-router';
import { sessionQuery } from '../app/session.ts';
import { rootRoute } from './root.ts';

/** Everything behind the sign-in; whoever is not signed in comes back here afterwards. */
export const signedInRoute = createRoute({
  getParentRoute: () => rootRoute,
  id: 'signed-in',
  beforeLoad: async ({ context, location }) => {
    const me = await context.queries.ensureQueryData(sessionQuery);
    if (!me) throw redirect({ href: `/sign-in?back=${encodeURIComponent(location.href)}` });
    return { me };
  },
  component: lazyRouteComponent(() => import('../app/shell.tsx'), 'Shell'),
});
