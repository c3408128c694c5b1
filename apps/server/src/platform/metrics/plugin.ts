import { createHash, timingSafeEqual } from 'node:crypto';
import type { BatchAnswer, CommandAnswer } from '@seatwell/contract';
import type { FastifyInstance } from 'fastify';
import fp from 'fastify-plugin';
import type { Database } from '../database/pool.ts';
import { Problem } from '../errors/problem.ts';
import { toProblem } from '../http/problems.ts';
import { recordedType } from '../http/recorded-type.ts';
import { createMetrics, type Metrics } from './metrics.ts';

declare module 'fastify' {
  interface FastifyInstance {
    /** undefined where nobody asked for metrics */
    metrics: Metrics | undefined;
  }
}

const sha256 = (text: string): Buffer => createHash('sha256').update(text).digest();

/** One route for all event types, whose type is a label of the commands; one for everything that is no API. */
const routeLabel = (url: string | undefined): string =>
  url?.startsWith('/api/') ? url.replace(/\/(commands|lists)\/[a-z-]+$/, '/$1/:type') : 'web';

/**
 * Counts requests, commands, rules and sign-ins, and answers them at `/metrics` to whoever has the token. Without a
 * token there are none: figures of a plant are never public by default.
 */
export const metricsPlugin = fp(
  async (app: FastifyInstance, { db, token }: { db: Database; token: string | undefined }) => {
    if (token === undefined) {
      app.decorate('metrics', undefined);
      return;
    }
    const metrics = createMetrics(db);
    app.decorate('metrics', metrics);
    countRequests(app, metrics);
    countCommands(app, metrics);
    const expected = sha256(`Bearer ${token}`);
    app.get('/metrics', async (request, reply) => {
      if (!timingSafeEqual(sha256(request.headers.authorization ?? ''), expected))
        throw new Problem('not-signed-in', 'Send the token of SEATWELL_METRICS_TOKEN as a bearer token.');
      return reply.type(metrics.registry.contentType).send(await metrics.registry.metrics());
    });
  },
  { name: 'metrics', dependencies: ['problems'] },
);

function countRequests(app: FastifyInstance, { requests, durations, signIns }: Metrics): void {
  app.addHook('onResponse', async (request, reply) => {
    const route = routeLabel(request.routeOptions.url);
    requests.inc({ method: request.method, route, status: reply.statusCode });
    // A live stream is an answer without an end.
    if (!route.endsWith('/live')) durations.observe({ route }, reply.elapsedTime / 1000);
    if (request.method === 'POST' && route === '/api/v1/session' && reply.statusCode === 200)
      signIns.inc({ outcome: 'signed-in' });
  });
}

function countCommands(app: FastifyInstance, { commands, rules, signIns, wrongSecrets }: Metrics): void {
  app.addHook('preSerialization', async (request, reply, answer) => {
    const type = recordedType(request);
    if (type === null || reply.statusCode !== 200) return answer;
    const { disposition, failed, recorded, refused } = answer as Partial<CommandAnswer & BatchAnswer>;
    if (disposition) commands.inc({ type, outcome: disposition });
    if (recorded) commands.inc({ type, outcome: 'applied' }, recorded);
    if (refused?.length) commands.inc({ type, outcome: 'rules-not-met' }, refused.length);
    for (const { rule } of [...(failed ?? []), ...(refused ?? []).flatMap((row) => row.failed)]) rules.inc({ rule });
    return answer;
  });
  app.addHook('onError', async (request, _reply, error) => {
    const problem = toProblem(error);
    const type = recordedType(request);
    if (type !== null) {
      commands.inc({ type, outcome: problem.code });
      if (problem.code === 'rules-not-met') for (const { code } of problem.items) rules.inc({ rule: code });
      if (problem.code === 'wrong-secret' || problem.code === 'locked-out') wrongSecrets.inc({ reason: problem.code });
    } else if (request.method === 'POST' && request.routeOptions.url === '/api/v1/session') {
      signIns.inc({ outcome: problem.code });
    }
  });
}
