import { permitsAnswer } from '@seatwell/contract';
import type { FastifyInstance } from 'fastify';
import type { ZodTypeProvider } from 'fastify-type-provider-zod';
import { anyoneReads, inShutdown, type ReadParts, reading } from '../reading/reading.ts';
import { permits } from './queries.ts';

/** Permits of a shutdown. */
export async function permitRoutes(instance: FastifyInstance, parts: ReadParts): Promise<void> {
  instance
    .withTypeProvider<ZodTypeProvider>()
    .get(
      '/api/v1/shutdowns/:shutdownId/permits',
      { schema: { tags: ['Permits'], params: inShutdown, response: { 200: permitsAnswer } }, config: anyoneReads },
      async (request) => permits(await reading(parts, request, request.params)),
    );
}
