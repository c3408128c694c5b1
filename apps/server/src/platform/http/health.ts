import type { FastifyInstance } from 'fastify';
import type { ZodTypeProvider } from 'fastify-type-provider-zod';
import { z } from 'zod';
import type { Database } from '../database/pool.ts';

const health = z.object({
  status: z.enum(['ok', 'down']),
  version: z.string(),
  database: z.enum(['ok', 'down']),
  warnings: z.array(z.string()),
});

/** Health without a session, and the OpenAPI document. */
export async function healthRoutes(
  instance: FastifyInstance,
  { db, version, warnings }: { db: Database; version: string; warnings: readonly string[] },
): Promise<void> {
  const app = instance.withTypeProvider<ZodTypeProvider>();
  app.get(
    '/api/v1/health',
    { schema: { tags: ['Operating'], response: { 200: health, 503: health } }, config: { action: 'public' } },
    async (_request, reply) => {
      const answers = await db.query('SELECT 1').then(
        () => true,
        () => false,
      );
      return reply.status(answers ? 200 : 503).send({
        status: answers ? 'ok' : 'down',
        version,
        database: answers ? 'ok' : 'down',
        warnings: [...warnings],
      });
    },
  );
  app.get('/api/v1/openapi.json', { schema: { hide: true }, config: { action: 'public' } }, async () =>
    instance.swagger(),
  );
}
