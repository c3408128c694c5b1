import { todayAnswer } from '@seatwell/contract';
import type { FastifyInstance } from 'fastify';
import type { ZodTypeProvider } from 'fastify-type-provider-zod';
import { anyoneReads, inShutdown, type ReadParts, reading } from '../reading/reading.ts';
import { today } from './queries.ts';

/** The first screen. */
export async function todayRoutes(instance: FastifyInstance, parts: ReadParts): Promise<void> {
  instance
    .withTypeProvider<ZodTypeProvider>()
    .get(
      '/api/v1/shutdowns/:shutdownId/today',
      { schema: { tags: ['Today'], params: inShutdown, response: { 200: todayAnswer } }, config: anyoneReads },
      async (request) => today(await reading(parts, request, request.params)),
    );
}
