import type { FastifyInstance } from 'fastify';
import type { ZodTypeProvider } from 'fastify-type-provider-zod';
import { z } from 'zod';
import type { Database } from '../database/pool.ts';

const health = z.object({
  status: z.enum(['ok', 'draining', 'down']),
  /** whether work should be sent to this process */
  ready: z.boolean(),
  version: z.string(),
  database: z.enum(['ok', 'down']),
  warnings: z.array(z.string()),
});

const live = z.object({ status: z.literal('ok'), version: z.string() });

export interface HealthParts {
  readonly db: Database;
  readonly version: string;
  readonly warnings: readonly string[];
  /** aborted as soon as the process is to stop: it finishes what it has and should be given nothing more */
  readonly stopping?: AbortSignal;
}

/** Health without a session (ready: may be sent work; live: need not be restarted), and the OpenAPI document. */
export async function healthRoutes(instance: FastifyInstance, parts: HealthParts): Promise<void> {
  const { db, version, warnings, stopping } = parts;
  const app = instance.withTypeProvider<ZodTypeProvider>();
  app.get(
    '/api/v1/health',
    { schema: { tags: ['Operating'], response: { 200: health, 503: health } }, config: { action: 'public' } },
    async (_request, reply) => {
      // As it was when the question came: one that is answered while the process stops was asked in time.
      const draining = stopping?.aborted === true;
      const answers = await db.query('SELECT 1').then(
        () => true,
        () => false,
      );
      const ready = answers && !draining;
      return reply.status(ready ? 200 : 503).send({
        status: ready ? 'ok' : draining ? 'draining' : 'down',
        ready,
        version,
        database: answers ? 'ok' : 'down',
        warnings: [...warnings],
      });
    },
  );
  app.get(
    '/api/v1/health/live',
    { schema: { tags: ['Operating'], response: { 200: live } }, config: { action: 'public' } },
    async () => ({ status: 'ok' as const, version }),
  );
  app.get('/api/v1/openapi.json', { schema: { hide: true }, config: { action: 'public' } }, async () =>
    instance.swagger(),
  );
}
