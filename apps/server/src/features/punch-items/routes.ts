import { punchItemsAnswer, punchItemsQuery } from '@seatwell/contract';
import type { FastifyInstance } from 'fastify';
import type { ZodTypeProvider } from 'fastify-type-provider-zod';
import { anyoneReads, inShutdown, type ReadParts, reading } from '../reading/reading.ts';
import { punchItems } from './queries.ts';

/** Punch items of a shutdown. */
export async function punchItemRoutes(instance: FastifyInstance, parts: ReadParts): Promise<void> {
  instance.withTypeProvider<ZodTypeProvider>().get(
    '/api/v1/shutdowns/:shutdownId/punch-items',
    {
      schema: {
        tags: ['Punch items'],
        params: inShutdown,
        querystring: punchItemsQuery,
        response: { 200: punchItemsAnswer },
      },
      config: anyoneReads,
    },
    async (request) => punchItems(await reading(parts, request, request.params), request.query.closed),
  );
}
