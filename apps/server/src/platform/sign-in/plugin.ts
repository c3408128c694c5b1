import cookie from '@fastify/cookie';
import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import fp from 'fastify-plugin';
import type { Database } from '../database/pool.ts';
import { Problem } from '../errors/problem.ts';
import { type Actor, actorOfToken } from './sessions.ts';

declare module 'fastify' {
  interface FastifyRequest {
    sessionActor: Actor | null;
  }
}

const SAFE = new Set(['GET', 'HEAD', 'OPTIONS']);
const LOOPBACK = /^(localhost|127\.\d+\.\d+\.\d+|\[::1\])(:\d+)?$/;

/** Plain http on a loopback address, so that scripts on the machine itself can sign in; everywhere else Secure. */
const onLoopback = (request: FastifyRequest): boolean =>
  request.protocol === 'http' && LOOPBACK.test(request.headers.host ?? '');

const cookieName = (request: FastifyRequest): string =>
  onLoopback(request) ? 'seatwell-session' : '__Host-seatwell-session';

export const sessionToken = (request: FastifyRequest): string | undefined => request.cookies[cookieName(request)];

export function setSessionCookie(request: FastifyRequest, reply: FastifyReply, token: string, expiresAt: Date): void {
  reply.setCookie(cookieName(request), token, {
    path: '/',
    httpOnly: true,
    sameSite: 'lax',
    secure: !onLoopback(request),
    expires: expiresAt,
  });
}

export function clearSessionCookie(request: FastifyRequest, reply: FastifyReply): void {
  reply.clearCookie(cookieName(request), {
    path: '/',
    secure: !onLoopback(request),
    sameSite: 'lax',
    httpOnly: true,
  });
}

/** The signed-in actor of a request. @throws Problem `not-signed-in` */
export function requireActor(request: FastifyRequest): Actor {
  if (!request.sessionActor)
    throw new Problem('not-signed-in', 'The session is missing or has ended. Sign in and try again.');
  return request.sessionActor;
}

/** An unsafe request must come from our own pages, where the browser says where it comes from. */
function refuseOtherOrigins(request: FastifyRequest): void {
  if (SAFE.has(request.method)) return;
  const site = request.headers['sec-fetch-site'];
  if (site && site !== 'same-origin' && site !== 'none') {
    throw new Problem(
      'origin-refused',
      `Sec-Fetch-Site is ${String(site)}; only same-origin requests may change anything.`,
    );
  }
  const { origin } = request.headers;
  if (origin && origin !== `${request.protocol}://${request.headers.host}`) {
    throw new Problem('origin-refused', `The request comes from ${origin}; only our own pages may change anything.`);
  }
}

/** Cookies, the origin check and `request.sessionActor`. */
export const signInPlugin = fp(
  async (app: FastifyInstance, { db }: { db: Database }) => {
    await app.register(cookie);
    app.decorateRequest('sessionActor', null);
    app.addHook('onRequest', async (request) => {
      refuseOtherOrigins(request);
      const token = sessionToken(request);
      if (token && request.url.startsWith('/api/')) request.sessionActor = await actorOfToken(db, token);
    });
  },
  { name: 'sign-in' },
);
