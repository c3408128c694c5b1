import { reviewsAnswer } from '@seatwell/contract';
import type { FastifyInstance } from 'fastify';
import type { ZodTypeProvider } from 'fastify-type-provider-zod';
import { inShutdown, type ReadParts, reading, recordsReads } from '../reading/reading.ts';
import { reviews } from './queries.ts';

/** Facts that wait to be settled. */
export async function reviewRoutes(instance: FastifyInstance, parts: ReadParts): Promise<void> {
  instance
    .withTypeProvider<ZodTypeProvider>()
    .get(
      '/api/v1/shutdowns/:shutdownId/reviews',
      { schema: { tags: ['Reviews'], params: inShutdown, response: { 200: reviewsAnswer } }, config: recordsReads },
      async (request) => reviews(await reading(parts, request, request.params)),
    );
}
