import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { proceduresQuery } from '../app/reads.ts';
import { signedInRoute } from './signed-in.ts';

export const proceduresRoute = createRoute({
  getParentRoute: () => signedInRoute,
  path: '/site/procedures',
  loader: ({ context }) => context.queries.ensureQueryData(proceduresQuery),
  component: lazyRouteComponent(() => import('../features/engineering/procedures-page.tsx'), 'ProceduresPage'),
});
