import type { Action } from '@seatwell/workflow';
import { ACTIONS } from '@seatwell/workflow';
import type { FastifyInstance } from 'fastify';
import fp from 'fastify-plugin';
import { allowsSomewhere } from '../access/allows.ts';
import { Problem } from '../errors/problem.ts';
import { requireActor } from '../sign-in/plugin.ts';

/** `public` needs no session, `signed-in` any session; everything else is an action of the role table. */
export type DeclaredAction = Action | 'public' | 'signed-in';

declare module 'fastify' {
  interface FastifyContextConfig {
    action?: DeclaredAction;
    /** routes whose action depends on the body say so; their decision asks the role table */
    decidesItself?: boolean;
  }
}

/** The actions of all routes by method and path: what the forbidden-role test is generated from. */
export interface DeclaredRoute {
  readonly method: string;
  readonly url: string;
  readonly action: DeclaredAction;
}

declare module 'fastify' {
  interface FastifyInstance {
    declaredRoutes: DeclaredRoute[];
  }
}

/** A route of the API without a declared action does not start; with one, the caller's roles are asked first. */
export const declaredActionsPlugin = fp(
  async (app: FastifyInstance) => {
    app.decorate('declaredRoutes', []);
    app.addHook('onRoute', (route) => {
      if (!route.url.startsWith('/api/') || route.method === 'HEAD' || route.method === 'OPTIONS') return;
      const action = route.config?.action;
      if (!action || (action !== 'public' && action !== 'signed-in' && !Object.hasOwn(ACTIONS, action))) {
        throw new Error(`Route ${String(route.method)} ${route.url} declares no action of the role table.`);
      }
      for (const method of [route.method].flat()) app.declaredRoutes.push({ method, url: route.url, action });
    });
    app.addHook('onRequest', async (request) => {
      const action = request.routeOptions.config.action;
      if (!action || action === 'public') return;
      const actor = requireActor(request);
      if (action === 'signed-in') return;
      if (!allowsSomewhere(actor, action)) {
        const roles = [...new Set(actor.grants.map((grant) => grant.role))].join(', ') || 'none';
        throw new Problem(
          'not-allowed',
          `“${ACTIONS[action].says}” is not among what your roles (${roles}) may do. Ask an administrator.`,
        );
      }
    });
  },
  { name: 'declared-actions', dependencies: ['sign-in'] },
);
