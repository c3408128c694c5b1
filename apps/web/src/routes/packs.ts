import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import {
  blindsQuery,
  itemsQuery,
  packQuery,
  packsQuery,
  permitsQuery,
  systemsQuery,
  talksQuery,
} from '../app/reads.ts';
import { shutdownRoute } from './shutdown.ts';

export const packsRoute = createRoute({
  getParentRoute: () => shutdownRoute,
  path: '/packs',
  loader: ({ context, params }) => context.queries.ensureQueryData(packsQuery(params.shutdownId)),
  component: lazyRouteComponent(() => import('../features/packs/packs-page.tsx'), 'PacksPage'),
});

export const packRoute = createRoute({
  getParentRoute: () => shutdownRoute,
  path: '/packs/$packId',
  loader: ({ context, params }) => context.queries.ensureQueryData(packQuery(params.shutdownId, params.packId)),
  component: lazyRouteComponent(() => import('../features/packs/pack-page.tsx'), 'PackPage'),
});

export const systemsRoute = createRoute({
  getParentRoute: () => shutdownRoute,
  path: '/systems',
  loader: ({ context, params }) => context.queries.ensureQueryData(systemsQuery(params.shutdownId)),
  component: lazyRouteComponent(() => import('../features/packs/systems-page.tsx'), 'SystemsPage'),
});

export const punchItemsRoute = createRoute({
  getParentRoute: () => shutdownRoute,
  path: '/punch-items',
  component: lazyRouteComponent(() => import('../features/punch/punch-page.tsx'), 'PunchPage'),
});

export const permitsRoute = createRoute({
  getParentRoute: () => shutdownRoute,
  path: '/permits',
  loader: ({ context, params }) => context.queries.ensureQueryData(permitsQuery(params.shutdownId)),
  component: lazyRouteComponent(() => import('../features/permits/permits-page.tsx'), 'PermitsPage'),
});

export const blindsRoute = createRoute({
  getParentRoute: () => shutdownRoute,
  path: '/blinds',
  loader: ({ context, params }) => context.queries.ensureQueryData(blindsQuery(params.shutdownId)),
  component: lazyRouteComponent(() => import('../features/blinds/blinds-page.tsx'), 'BlindsPage'),
});

export const itemsRoute = createRoute({
  getParentRoute: () => shutdownRoute,
  path: '/items',
  loader: ({ context, params }) => context.queries.ensureQueryData(itemsQuery(params.shutdownId)),
  component: lazyRouteComponent(() => import('../features/items/items-page.tsx'), 'ItemsPage'),
});

export const talksRoute = createRoute({
  getParentRoute: () => shutdownRoute,
  path: '/talks',
  loader: ({ context, params }) => context.queries.ensureQueryData(talksQuery(params.shutdownId)),
  component: lazyRouteComponent(() => import('../features/talks/talks-page.tsx'), 'TalksPage'),
});
