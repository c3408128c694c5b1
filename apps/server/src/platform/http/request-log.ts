import { randomUUID } from 'node:crypto';
import { type FastifyInstance, type FastifyServerOptions, LogController } from 'fastify';
import fp from 'fastify-plugin';
import { recordedType } from './recorded-type.ts';

/** Where the log of requests goes, and from which level on. */
export interface LogTo {
  readonly level: string;
  readonly stream: { write(line: string): void };
}

/** What of an error is logged: not its other properties, in which a database tells the values of a row. */
const withoutValues = (error: Error & { code?: string }) => ({
  type: error.name,
  code: error.code,
  message: error.message,
  stack: error.stack,
});

/**
 * Fastify's options for the log: no address with its query, no header and no body ever reaches it, so that neither a
 * secret nor a person's name can. Each request has an id of its own, unique among replicas.
 */
export const requestLogOptions = ({ level, stream }: LogTo) =>
  ({
    logController: new LogController({ disableRequestLogging: true }),
    genReqId: () => randomUUID(),
    requestIdHeader: false,
    logger: {
      level,
      stream,
      serializers: {
        err: withoutValues as never,
        req: ((request: { method: string }) => ({ method: request.method })) as never,
      },
    },
  }) satisfies FastifyServerOptions;

/** One line for each answer of the API: request id, route, status, time, and the event that it was about. */
export const requestLogPlugin = fp(
  async (app: FastifyInstance) => {
    app.addHook('onRequest', async (request, reply) => {
      reply.header('x-request-id', request.id);
    });
    app.addHook('onResponse', async (request, reply) => {
      const route = request.routeOptions.url;
      if (!route?.startsWith('/api/')) return;
      const { eventId } = (request.body ?? {}) as { eventId?: unknown };
      const type = recordedType(request);
      const line = {
        method: request.method,
        route,
        status: reply.statusCode,
        took_ms: Math.round(reply.elapsedTime),
        accountId: request.sessionActor?.accountId,
        ...(type === null ? {} : { eventType: type, eventId: isId(eventId) ? eventId : undefined }),
      };
      if (reply.statusCode >= 500) request.log.error(line, 'failed');
      else if (route === '/api/v1/health') request.log.debug(line, 'answered');
      else request.log.info(line, 'answered');
    });
  },
  { name: 'request-log', dependencies: ['sign-in'] },
);

/** A body that no schema has seen may hold anything. */
const isId = (value: unknown): boolean => typeof value === 'string' && /^[0-9a-f-]{36}$/i.test(value);
