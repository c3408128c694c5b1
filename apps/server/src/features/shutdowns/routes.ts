import { choicesAnswer, crewsAnswer, shutdownAnswer, shutdownsAnswer } from '@seatwell/contract';
import type { FastifyInstance } from 'fastify';
import type { ZodTypeProvider } from 'fastify-type-provider-zod';
import { anyoneReads, inShutdown, type ReadParts, reading, siteReading } from '../reading/reading.ts';
import { choices, crews, shutdownPage, shutdowns } from './queries.ts';

const tags = ['Shutdown'];

/** The shutdowns of the site; of one, its settings, its places and crews. */
export async function shutdownRoutes(instance: FastifyInstance, parts: ReadParts): Promise<void> {
  const app = instance.withTypeProvider<ZodTypeProvider>();
  const base = '/api/v1/shutdowns/:shutdownId';
  app.get(
    '/api/v1/shutdowns',
    { schema: { tags, response: { 200: shutdownsAnswer } }, config: anyoneReads },
    (request) => shutdowns(siteReading(parts, request)),
  );
  app.get(
    `${base}/shutdown`,
    { schema: { tags, params: inShutdown, response: { 200: shutdownAnswer } }, config: anyoneReads },
    async (request) => shutdownPage(await reading(parts, request, request.params)),
  );
  app.get(
    `${base}/choices`,
    { schema: { tags, params: inShutdown, response: { 200: choicesAnswer } }, config: anyoneReads },
    async (request) => choices(await reading(parts, request, request.params)),
  );
  app.get(
    `${base}/crews`,
    { schema: { tags, params: inShutdown, response: { 200: crewsAnswer } }, config: anyoneReads },
    async (request) => crews(await reading(parts, request, request.params)),
  );
}
