import { createRoute, notFound } from '@tanstack/react-router';
import { signedInRoute } from './signed-in.ts';

/** Everything of one shutdown hangs below this: children have `params.shutdownId`. */
export const shutdownRoute = createRoute({
  getParentRoute: () => signedInRoute,
  path: '/shutdowns/$shutdownId',
  beforeLoad: ({ context: { me }, params }) => {
    if (!me.shutdowns.some((each) => each.shutdownId === params.shutdownId)) throw notFound();
  },
});
