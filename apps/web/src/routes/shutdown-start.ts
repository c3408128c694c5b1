import { createRoute, redirect } from '@tanstack/react-router';
import { startAddress } from '../app/navigation.ts';
import { shutdownRoute } from './shutdown.ts';

/** The address of a shutdown itself leads to where the person begins in it. */
export const shutdownStartRoute = createRoute({
  getParentRoute: () => shutdownRoute,
  path: '/',
  beforeLoad: ({ context: { me }, params }) => {
    const roles = me.grants.map((grant) => grant.role);
    throw redirect({ href: startAddress(roles, params.shutdownId) });
  },
});
