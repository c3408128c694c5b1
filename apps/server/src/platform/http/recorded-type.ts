import type { FastifyRequest } from 'fastify';

/** The event type that a request records, from its route; null where it records none. */
export const recordedType = (request: FastifyRequest): string | null =>
  /\/(?:commands|lists)\/([a-z-]+)$/.exec(request.routeOptions.url ?? '')?.[1] ?? null;
