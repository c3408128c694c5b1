import { talksAnswer } from '@seatwell/contract';
import type { FastifyInstance } from 'fastify';
import type { ZodTypeProvider } from 'fastify-type-provider-zod';
import { anyoneReads, inShutdown, type ReadParts, reading } from '../reading/reading.ts';
import { talks } from './queries.ts';

/** Pre-job talks of a shutdown. */
export async function talkRoutes(instance: FastifyInstance, parts: ReadParts): Promise<void> {
  instance
    .withTypeProvider<ZodTypeProvider>()
    .get(
      '/api/v1/shutdowns/:shutdownId/talks',
      { schema: { tags: ['Talks'], params: inShutdown, response: { 200: talksAnswer } }, config: anyoneReads },
      async (request) => talks(await reading(parts, request, request.params)),
    );
}
