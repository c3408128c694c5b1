import { createRoute, lazyRouteComponent, redirect } from '@tanstack/react-router';
import { request } from '../app/api-client.ts';
import { rootRoute } from './root.ts';

export const firstVisitRoute = createRoute({
  getParentRoute: () => rootRoute,
  path: '/first-visit',
  beforeLoad: async () => {
    const { needed } = await request<{ needed: boolean }>('/first-visit');
    if (!needed) throw redirect({ href: '/sign-in' });
  },
  component: lazyRouteComponent(() => import('../features/session/first-visit-page.tsx'), 'FirstVisitPage'),
});
