import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { signedInRoute } from './signed-in.ts';

export const calculateRoute = createRoute({
  getParentRoute: () => signedInRoute,
  path: '/calculate',
  component: lazyRouteComponent(() => import('../features/calculator/calculator-page.tsx'), 'CalculatorPage'),
});

export const simulationRoute = createRoute({
  getParentRoute: () => signedInRoute,
  path: '/calculate/simulation',
  component: lazyRouteComponent(() => import('../features/simulation/simulation-page.tsx'), 'SimulationPage'),
});
