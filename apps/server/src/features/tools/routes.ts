import { toolsAnswer } from '@seatwell/contract';
import type { FastifyInstance } from 'fastify';
import type { ZodTypeProvider } from 'fastify-type-provider-zod';
import { anyoneReads, type ReadParts, siteReading } from '../reading/reading.ts';
import { tools } from './queries.ts';

/** Tools, pumps and gauges. */
export async function toolRoutes(instance: FastifyInstance, parts: ReadParts): Promise<void> {
  instance
    .withTypeProvider<ZodTypeProvider>()
    .get(
      '/api/v1/tools',
      { schema: { tags: ['Tools'], response: { 200: toolsAnswer } }, config: anyoneReads },
      (request) => tools(siteReading(parts, request)),
    );
}
