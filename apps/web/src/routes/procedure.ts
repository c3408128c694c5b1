import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { proceduresQuery } from '../app/reads.ts';
import { loadTexts } from '../texts/translate.ts';
import { signedInRoute } from './signed-in.ts';

export const procedureRoute = createRoute({
  getParentRoute: () => signedInRoute,
  path: '/site/procedures/$procedureId',
  loader: ({ context }) =>
    Promise.all([loadTexts('engineering', 'joint', 'calculator'), context.queries.ensureQueryData(proceduresQuery)]),
  component: lazyRouteComponent(() => import('../features/engineering/procedure-page.tsx'), 'ProcedurePage'),
});
