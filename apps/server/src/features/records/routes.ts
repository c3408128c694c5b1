import { Readable } from 'node:stream';
import { id } from '@seatwell/contract';
import type { FastifyInstance, FastifyReply } from 'fastify';
import type { ZodTypeProvider } from 'fastify-type-provider-zod';
import { z } from 'zod';
import type { Database } from '../../platform/database/pool.ts';
import { requireActor } from '../../platform/sign-in/plugin.ts';
import type { Clock } from '../recording/record-command.ts';
import { loadShutdown } from '../shutdowns/load-shutdown.ts';
import { jointRecord } from './joint-record.ts';
import { recordLines } from './stream-record.ts';

const tags = ['Record'];

/** Records to be checked offline, by apps/server/record-verifier.mjs or anybody's own program. */
export async function recordRoutes(
  instance: FastifyInstance,
  { db, clock }: { readonly db: Database; readonly clock: Clock },
): Promise<void> {
  const app = instance.withTypeProvider<ZodTypeProvider>();
  const now = () => clock().toISOString();
  const asFile = (reply: FastifyReply, name: string) =>
    reply.header('content-disposition', `attachment; filename="${name}"`).header('cache-control', 'no-store');

  app.get(
    '/api/v1/shutdowns/:shutdownId/record',
    {
      schema: { summary: 'The whole record of a shutdown, line by line', tags, params: z.object({ shutdownId: id }) },
      config: { action: 'read-records' },
    },
    async (request, reply) => {
      const { siteId } = requireActor(request);
      const { shutdownId, name } = await loadShutdown(db, siteId, request.params.shutdownId);
      asFile(reply, `record-${shutdownId}.jsonl`).type('application/jsonl; charset=utf-8');
      return reply.send(Readable.from(recordLines(db, siteId, { streamId: shutdownId, name }, now())));
    },
  );
  app.get(
    '/api/v1/site/record',
    { schema: { summary: 'The whole record of the site, line by line', tags }, config: { action: 'operate' } },
    async (request, reply) => {
      const { siteId } = requireActor(request);
      asFile(reply, `record-${siteId}.jsonl`).type('application/jsonl; charset=utf-8');
      return reply.send(Readable.from(recordLines(db, siteId, { streamId: siteId, name: 'site' }, now())));
    },
  );
  app.get(
    '/api/v1/shutdowns/:shutdownId/joints/:jointId/record',
    {
      schema: {
        summary: 'The record of a joint with proofs that it is under the head',
        tags,
        params: z.object({ shutdownId: id, jointId: id }),
      },
      config: { action: 'read-records' },
    },
    async (request, reply) => {
      const { siteId } = requireActor(request);
      const record = await jointRecord(db, { siteId, ...request.params, now: now() });
      return asFile(reply, `record-${record.jointId}.json`).send(record);
    },
  );
}
