import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { gasketDataQuery, lubricantsQuery, makerTorquesQuery, targetTablesQuery } from '../app/reads.ts';
import { loadTexts } from '../texts/translate.ts';
import { signedInRoute } from './signed-in.ts';

export const dataRoute = createRoute({
  getParentRoute: () => signedInRoute,
  path: '/site/data',
  loader: ({ context: { queries } }) =>
    Promise.all([
      loadTexts('engineering', 'joint'),
      queries.ensureQueryData(gasketDataQuery),
      queries.ensureQueryData(lubricantsQuery),
      queries.ensureQueryData(makerTorquesQuery),
      queries.ensureQueryData(targetTablesQuery),
    ]),
  component: lazyRouteComponent(() => import('../features/engineering/data-page.tsx'), 'DataPage'),
});
