import Fastify, { type FastifyInstance } from 'fastify';
import type { Database } from './platform/database/pool.ts';

/** Builds the HTTP server without starting it. */
export async function createApp(parts: {
  readonly pool: Database;
  readonly version: string;
}): Promise<FastifyInstance> {
  const app = Fastify({ logger: { stream: process.stderr, level: 'warn' } });
  app.get('/api/v1/health', async () => {
    await parts.pool.query('SELECT 1');
    return { status: 'ok', version: parts.version, database: 'ok', warnings: [] };
  });
  return app;
}
