import { createRoute, lazyRouteComponent, redirect } from '@tanstack/react-router';
import { request } from '../app/api-client.ts';
import { rootRoute } from './root.ts';

export const signInRoute = createRoute({
  getParentRoute: () => rootRoute,
  path: '/sign-in',
  validateSearch: (search: Record<string, unknown>): { back?: string } => {
    // Only addresses of our own: a link from elsewhere must not lead out of the app after signing in.
    const { back } = search;
    return typeof back === 'string' && /^\/(?![/\\])/.test(back) ? { back } : {};
  },
  beforeLoad: async () => {
    const { needed } = await request<{ needed: boolean }>('/first-visit');
    if (needed) throw redirect({ href: '/first-visit' });
  },
  component: lazyRouteComponent(() => import('../features/session/sign-in-page.tsx'), 'SignInPage'),
});
