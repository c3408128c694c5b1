import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { jointQuery, shutdownQuery } from '../app/reads.ts';
import { textOf } from '../app/search-params.ts';
import { shutdownRoute } from './shutdown.ts';

const ofMake = (search: Record<string, unknown>) => {
  const make = textOf(search.make);
  const task = textOf(search.do);
  return { ...(make === undefined ? {} : { make }), ...(task === undefined ? {} : { do: task }) };
};

export const workRoute = createRoute({
  getParentRoute: () => shutdownRoute,
  path: '/joints/$jointId/work',
  validateSearch: ofMake,
  loader: ({ context: { queries }, params }) =>
    Promise.all([
      queries.ensureQueryData(jointQuery(params.shutdownId, params.jointId)),
      queries.ensureQueryData(shutdownQuery(params.shutdownId)),
    ]),
  component: lazyRouteComponent(() => import('../features/work/work-page.tsx'), 'WorkPage'),
});

export const tightenRoute = createRoute({
  getParentRoute: () => shutdownRoute,
  path: '/joints/$jointId/tighten',
  validateSearch: ofMake,
  loader: ({ context: { queries }, params }) =>
    Promise.all([
      queries.ensureQueryData(jointQuery(params.shutdownId, params.jointId)),
      queries.ensureQueryData(shutdownQuery(params.shutdownId)),
    ]),
  component: lazyRouteComponent(() => import('../features/tightening/tighten-page.tsx'), 'TightenPage'),
});
