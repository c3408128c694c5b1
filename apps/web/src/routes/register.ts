import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { choicesQuery } from '../app/reads.ts';
import { loadTexts } from '../texts/translate.ts';
import { shutdownRoute } from './shutdown.ts';

export const registerRoute = createRoute({
  getParentRoute: () => shutdownRoute,
  path: '/register',
  loader: ({ context, params }) =>
    Promise.all([
      loadTexts('register', 'joint', 'engineering'),
      context.queries.ensureQueryData(choicesQuery(params.shutdownId)),
    ]),
  component: lazyRouteComponent(() => import('../features/register/register-page.tsx'), 'RegisterPage'),
});
