import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { accountsQuery, peopleQuery, personQuery, toolsQuery } from '../app/reads.ts';
import { signedInRoute } from './signed-in.ts';

export const peopleRoute = createRoute({
  getParentRoute: () => signedInRoute,
  path: '/site/people',
  loader: ({ context }) => context.queries.ensureQueryData(peopleQuery),
  component: lazyRouteComponent(() => import('../features/people/people-page.tsx'), 'PeoplePage'),
});

export const personRoute = createRoute({
  getParentRoute: () => signedInRoute,
  path: '/site/people/$personId',
  loader: ({ context, params }) => context.queries.ensureQueryData(personQuery(params.personId)),
  component: lazyRouteComponent(() => import('../features/people/person-page.tsx'), 'PersonPage'),
});

export const accountsRoute = createRoute({
  getParentRoute: () => signedInRoute,
  path: '/site/accounts',
  loader: ({ context }) => context.queries.ensureQueryData(accountsQuery),
  component: lazyRouteComponent(() => import('../features/people/accounts-page.tsx'), 'AccountsPage'),
});

export const toolsRoute = createRoute({
  getParentRoute: () => signedInRoute,
  path: '/site/tools',
  loader: ({ context }) => context.queries.ensureQueryData(toolsQuery),
  component: lazyRouteComponent(() => import('../features/tools/tools-page.tsx'), 'ToolsPage'),
});
