import { blindsAnswer, itemsAnswer } from '@seatwell/contract';
import type { FastifyInstance } from 'fastify';
import type { ZodTypeProvider } from 'fastify-type-provider-zod';
import { anyoneReads, inShutdown, type ReadParts, reading } from '../reading/reading.ts';
import { blinds, items } from './queries.ts';

const tags = ['Blinds and items'];

/** Blinds that go in and come out, and the items that joints hold. */
export async function blindRoutes(instance: FastifyInstance, parts: ReadParts): Promise<void> {
  const app = instance.withTypeProvider<ZodTypeProvider>();
  app.get(
    '/api/v1/shutdowns/:shutdownId/blinds',
    { schema: { tags, params: inShutdown, response: { 200: blindsAnswer } }, config: anyoneReads },
    async (request) => blinds(await reading(parts, request, request.params)),
  );
  app.get(
    '/api/v1/shutdowns/:shutdownId/items',
    { schema: { tags, params: inShutdown, response: { 200: itemsAnswer } }, config: anyoneReads },
    async (request) => items(await reading(parts, request, request.params)),
  );
}
