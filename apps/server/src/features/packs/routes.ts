import { id, packPage as packPageAnswer, packsAnswer } from '@seatwell/contract';
import type { FastifyInstance } from 'fastify';
import type { ZodTypeProvider } from 'fastify-type-provider-zod';
import { anyoneReads, inShutdown, type ReadParts, reading } from '../reading/reading.ts';
import { packPage, packs } from './queries.ts';

const tags = ['Test packs'];

/** Test packs: what stops each, and one with its joints, release and readings. */
export async function packRoutes(instance: FastifyInstance, parts: ReadParts): Promise<void> {
  const app = instance.withTypeProvider<ZodTypeProvider>();
  const base = '/api/v1/shutdowns/:shutdownId/packs';
  app.get(
    base,
    { schema: { tags, params: inShutdown, response: { 200: packsAnswer } }, config: anyoneReads },
    async (request) => packs(await reading(parts, request, request.params)),
  );
  app.get(
    `${base}/:packId`,
    {
      schema: { tags, params: inShutdown.extend({ packId: id }), response: { 200: packPageAnswer } },
      config: anyoneReads,
    },
    async (request) => packPage(await reading(parts, request, request.params), request.params.packId),
  );
}
