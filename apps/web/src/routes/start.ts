import { createRoute, redirect } from '@tanstack/react-router';
import { addresses } from '../app/addresses.ts';
import { startAddress } from '../app/navigation.ts';
import { currentShutdown } from '../app/use-shutdown.ts';
import { signedInRoute } from './signed-in.ts';

/** The bare address leads to where the person begins. */
export const startRoute = createRoute({
  getParentRoute: () => signedInRoute,
  path: '/',
  beforeLoad: ({ context: { me } }) => {
    const shutdown = currentShutdown(me.shutdowns, undefined);
    const roles = me.grants.map((grant) => grant.role);
    throw redirect({ href: shutdown ? startAddress(roles, shutdown.shutdownId) : addresses.shutdowns() });
  },
});
