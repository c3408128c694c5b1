import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { textOf } from '../app/search-params.ts';
import { shutdownRoute } from './shutdown.ts';

export const signRoute = createRoute({
  getParentRoute: () => shutdownRoute,
  path: '/sign/$what',
  component: lazyRouteComponent(() => import('../features/signing/sign-page.tsx'), 'SignPage'),
});

export const foundRoute = createRoute({
  getParentRoute: () => shutdownRoute,
  path: '/found',
  component: lazyRouteComponent(() => import('../features/work/found-page.tsx'), 'FoundPage'),
});

export const talkRoute = createRoute({
  getParentRoute: () => shutdownRoute,
  path: '/talk',
  validateSearch: (search: Record<string, unknown>): { procedure?: string } => {
    const procedure = textOf(search.procedure);
    return procedure === undefined ? {} : { procedure };
  },
  component: lazyRouteComponent(() => import('../features/work/talk-page.tsx'), 'TalkPage'),
});

export const packTestRoute = createRoute({
  getParentRoute: () => shutdownRoute,
  path: '/packs/$packId/test',
  component: lazyRouteComponent(() => import('../features/packs-work/pack-test-page.tsx'), 'PackTestPage'),
});

export const handOverRoute = createRoute({
  getParentRoute: () => shutdownRoute,
  path: '/systems/$systemId/hand-over',
  component: lazyRouteComponent(() => import('../features/handover/hand-over-page.tsx'), 'HandOverPage'),
});
