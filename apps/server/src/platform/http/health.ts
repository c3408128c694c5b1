import type { FastifyInstance } from 'fastify';
import type { ZodTypeProvider } from 'fastify-type-provider-zod';
import { z } from 'zod';
import type { HeadSigner } from '../record-key/head-signer.ts';

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
  readonly version: string;
  readonly warnings: readonly string[];
  readonly signer: HeadSigner;
  /** aborted as soon as the process is to stop: it finishes what it has and should be given nothing more */
  readonly stopping?: AbortSignal;
}

/** Anybody may ask for health: which keys and files, the operator's page tells. */
const UNSIGNED = 'Heads of the record are not signed: the page “The server” tells why, and the remedy.';

/** Health without a session (ready: may be sent work; live: need not be restarted), and the OpenAPI document. */
export async function healthRoutes(instance: FastifyInstance, parts: HealthParts): Promise<void> {
  const { version, warnings, signer, stopping } = parts;
  const app = instance.withTypeProvider<ZodTypeProvider>();
  app.get(
    '/api/v1/health',
    { schema: { tags: ['Operating'], response: { 200: health, 503: health } }, config: { action: 'public' } },
    async (_request, reply) => {
      // As it was when the question came: one that is answered while the process stops was asked in time.
      const draining = stopping?.aborted === true;
      const [answers, signs] = await signer.signing().then(
        ({ key }) => [true, key !== undefined] as const,
        () => [false, true] as const,
      );
      const ready = answers && !draining;
      return reply.status(ready ? 200 : 503).send({
        status: ready ? 'ok' : draining ? 'draining' : 'down',
        ready,
        version,
        database: answers ? 'ok' : 'down',
        warnings: signs ? [...warnings] : [...warnings, UNSIGNED],
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
