import { areasAnswer, progressAnswer, progressQuery } from '@seatwell/contract';
import type { FastifyInstance } from 'fastify';
import type { ZodTypeProvider } from 'fastify-type-provider-zod';
import { anyoneReads, inShutdown, type ReadParts, reading } from '../reading/reading.ts';
import { progress } from './progress.ts';
import { areas } from './queries.ts';

const tags = ['Progress'];

/** Progress by area, with sign-offs and people, and by system, pack and crew. */
export async function areaRoutes(instance: FastifyInstance, parts: ReadParts): Promise<void> {
  const app = instance.withTypeProvider<ZodTypeProvider>();
  app.get(
    '/api/v1/shutdowns/:shutdownId/areas',
    { schema: { tags, params: inShutdown, response: { 200: areasAnswer } }, config: anyoneReads },
    async (request) => areas(await reading(parts, request, request.params)),
  );
  app.get(
    '/api/v1/shutdowns/:shutdownId/progress',
    {
      schema: { tags, params: inShutdown, querystring: progressQuery, response: { 200: progressAnswer } },
      config: anyoneReads,
    },
    async (request) => progress(await reading(parts, request, request.params), request.query.by),
  );
}
