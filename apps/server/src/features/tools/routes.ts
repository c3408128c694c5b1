import { id, toolJointsAnswer, toolsAnswer } from '@seatwell/contract';
import type { FastifyInstance } from 'fastify';
import type { ZodTypeProvider } from 'fastify-type-provider-zod';
import { z } from 'zod';
import { anyoneReads, type ReadParts, siteReading } from '../reading/reading.ts';
import { tools } from './queries.ts';
import { toolJoints } from './tool-joints.ts';

/** Tools, pumps and gauges. */
export async function toolRoutes(instance: FastifyInstance, parts: ReadParts): Promise<void> {
  instance
    .withTypeProvider<ZodTypeProvider>()
    .get(
      '/api/v1/tools',
      { schema: { tags: ['Tools'], response: { 200: toolsAnswer } }, config: anyoneReads },
      (request) => tools(siteReading(parts, request)),
    )
    .get(
      '/api/v1/tools/:toolId/joints',
      {
        schema: { tags: ['Tools'], params: z.object({ toolId: id }), response: { 200: toolJointsAnswer } },
        config: anyoneReads,
      },
      (request) => toolJoints(siteReading(parts, request), request.params.toolId),
    );
}
