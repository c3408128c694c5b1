import { id } from '@seatwell/contract';
import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import type { ZodTypeProvider } from 'fastify-type-provider-zod';
import { z } from 'zod';
import { loadShutdown } from '../../features/shutdowns/load-shutdown.ts';
import type { Database } from '../database/pool.ts';
import { requireActor, sessionToken } from '../sign-in/plugin.ts';
import { actorOfToken } from '../sign-in/sessions.ts';
import { HeadWatch } from './head-watch.ts';

const HEARTBEAT_MS = 20_000;

/** Server-sent events: the head of a shutdown's or the site's stream, now and at each change. */
export async function liveRoutes(instance: FastifyInstance, { db }: { db: Database }): Promise<void> {
  const app = instance.withTypeProvider<ZodTypeProvider>();
  const watch = new HeadWatch(db);
  /** how each open stream ends, and the session that it belongs to */
  const open = new Map<() => void, string | undefined>();
  app.addHook('preClose', async () => {
    watch.stop();
    for (const end of open.keys()) end();
  });
  // Signing out ends the streams of the session at once in this process; the others ask at their next heartbeat.
  app.addHook('onResponse', async (request, reply) => {
    if (request.method !== 'DELETE' || request.routeOptions.url !== '/api/v1/session' || reply.statusCode !== 204)
      return;
    const ended = sessionToken(request);
    for (const [end, token] of open) if (token !== undefined && token === ended) end();
  });

  /** Streams heads until the browser leaves, the server stops, or the session ends. */
  function stream(request: FastifyRequest, reply: FastifyReply, streamId: string): void {
    const token = sessionToken(request);
    reply.hijack();
    const { raw } = reply;
    raw.writeHead(200, {
      'content-type': 'text/event-stream; charset=utf-8',
      'cache-control': 'no-cache, no-transform',
      connection: 'keep-alive',
      'x-accel-buffering': 'no',
    });
    raw.write('retry: 2000\n\n');
    const unlisten = watch.listen(streamId, ({ sequence, root, changedAt }) => {
      raw.write(`id: ${sequence}\nevent: head\ndata: ${JSON.stringify({ version: sequence, root, changedAt })}\n\n`);
    });
    const heartbeat = setInterval(async () => {
      const signedIn = token ? await actorOfToken(db, token).catch(() => 'unknown') : null;
      if (!signedIn) end();
      else raw.write(': still here\n\n');
    }, HEARTBEAT_MS);
    const end = () => {
      clearInterval(heartbeat);
      unlisten();
      if (open.delete(end)) instance.metrics?.liveStreams.dec();
      raw.end();
    };
    open.set(end, token);
    instance.metrics?.liveStreams.inc();
    request.raw.on('close', end);
  }

  app.get(
    '/api/v1/shutdowns/:shutdownId/live',
    { schema: { tags: ['Live'], params: z.object({ shutdownId: id }) }, config: { action: 'read-register' } },
    async (request, reply) => {
      const shutdown = await loadShutdown(db, requireActor(request).siteId, request.params.shutdownId);
      stream(request, reply, shutdown.shutdownId);
    },
  );

  app.get(
    '/api/v1/site/live',
    { schema: { tags: ['Live'] }, config: { action: 'read-register' } },
    async (request, reply) => {
      stream(request, reply, requireActor(request).siteId);
    },
  );
}
