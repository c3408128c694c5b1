import { id, systemPage as systemPageAnswer, systemsAnswer } from '@seatwell/contract';
import type { FastifyInstance } from 'fastify';
import type { ZodTypeProvider } from 'fastify-type-provider-zod';
import { anyoneReads, inShutdown, type ReadParts, reading } from '../reading/reading.ts';
import { systemPage, systems } from './queries.ts';

const tags = ['Systems'];

/** Systems and what must be zero before they are handed over. */
export async function systemRoutes(instance: FastifyInstance, parts: ReadParts): Promise<void> {
  const app = instance.withTypeProvider<ZodTypeProvider>();
  const base = '/api/v1/shutdowns/:shutdownId/systems';
  app.get(
    base,
    { schema: { tags, params: inShutdown, response: { 200: systemsAnswer } }, config: anyoneReads },
    async (request) => systems(await reading(parts, request, request.params)),
  );
  app.get(
    `${base}/:systemId`,
    {
      schema: { tags, params: inShutdown.extend({ systemId: id }), response: { 200: systemPageAnswer } },
      config: anyoneReads,
    },
    async (request) => systemPage(await reading(parts, request, request.params), request.params.systemId),
  );
}
