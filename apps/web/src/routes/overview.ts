import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { areasQuery, packsQuery, recordHeadQuery, reviewsQuery, systemsQuery, todayQuery } from '../app/reads.ts';
import { foundJointsQuery } from '../features/reviews/found-joints-query.ts';
import { shutdownRoute } from './shutdown.ts';

export const todayRoute = createRoute({
  getParentRoute: () => shutdownRoute,
  path: '/today',
  loader: ({ context, params }) =>
    Promise.all([
      context.queries.ensureQueryData(todayQuery(params.shutdownId)),
      context.queries.ensureQueryData(packsQuery(params.shutdownId)),
    ]),
  component: lazyRouteComponent(() => import('../features/today/today-page.tsx'), 'TodayPage'),
});

export const areasRoute = createRoute({
  getParentRoute: () => shutdownRoute,
  path: '/areas',
  component: lazyRouteComponent(() => import('../features/areas/areas-page.tsx'), 'AreasPage'),
});

export const reportRoute = createRoute({
  getParentRoute: () => shutdownRoute,
  path: '/report',
  loader: ({ context, params }) =>
    Promise.all([
      context.queries.ensureQueryData(todayQuery(params.shutdownId)),
      context.queries.ensureQueryData(areasQuery(params.shutdownId)),
      context.queries.ensureQueryData(systemsQuery(params.shutdownId)),
      context.queries.ensureQueryData(packsQuery(params.shutdownId)),
      context.queries.ensureQueryData(recordHeadQuery(params.shutdownId)),
    ]),
  component: lazyRouteComponent(() => import('../features/report/report-page.tsx'), 'ReportPage'),
});

export const reviewsRoute = createRoute({
  getParentRoute: () => shutdownRoute,
  path: '/reviews',
  loader: ({ context, params }) => context.queries.ensureQueryData(reviewsQuery(params.shutdownId)),
  component: lazyRouteComponent(() => import('../features/reviews/reviews-page.tsx'), 'ReviewsPage'),
});

export const foundJointsRoute = createRoute({
  getParentRoute: () => shutdownRoute,
  path: '/found-joints',
  loader: ({ context, params }) => context.queries.ensureQueryData(foundJointsQuery(params.shutdownId)),
  component: lazyRouteComponent(() => import('../features/reviews/found-page.tsx'), 'FoundJointsPage'),
});
