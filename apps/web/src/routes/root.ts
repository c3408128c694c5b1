import type { QueryClient } from '@tanstack/react-query';
import { createRootRouteWithContext } from '@tanstack/react-router';

/** What every loader has at hand. */
export interface RouteContext {
  readonly queries: QueryClient;
}

export const rootRoute = createRootRouteWithContext<RouteContext>()();
