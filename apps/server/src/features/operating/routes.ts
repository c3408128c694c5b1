import { id, operatorStatus, retention } from '@seatwell/contract';
import type { FastifyInstance } from 'fastify';
import type { ZodTypeProvider } from 'fastify-type-provider-zod';
import { z } from 'zod';
import { requireActor } from '../../platform/sign-in/plugin.ts';
import type { Clock } from '../recording/record-command.ts';
import { retryJob, setRetention, unlockAccount, unlockAddress } from './actions.ts';
import { type OperatorParts, readStatus } from './status.ts';

const tags = ['Operating'];
const config = { action: 'operate' } as const;

/** How the server does, for administrators, and what they can do about it. */
export async function operatingRoutes(
  instance: FastifyInstance,
  parts: OperatorParts & { readonly clock: Clock },
): Promise<void> {
  const app = instance.withTypeProvider<ZodTypeProvider>();
  const { db } = parts;

  app.get('/api/v1/operator/status', { schema: { tags, response: { 200: operatorStatus } }, config }, (request) =>
    readStatus(parts, requireActor(request).siteId, parts.clock()),
  );
  app.post(
    '/api/v1/operator/jobs/:jobId/retry',
    { schema: { tags, params: z.object({ jobId: id }) }, config },
    async (request, reply) => {
      await retryJob(db, requireActor(request).siteId, request.params.jobId);
      return reply.status(204).send();
    },
  );
  app.post(
    '/api/v1/operator/accounts/:accountId/unlock',
    { schema: { tags, params: z.object({ accountId: id }) }, config },
    async (request, reply) => {
      await unlockAccount(db, requireActor(request).siteId, request.params.accountId);
      return reply.status(204).send();
    },
  );
  app.post(
    '/api/v1/operator/addresses/unlock',
    { schema: { tags, body: z.strictObject({ address: z.string().min(1).max(100) }) }, config },
    async (request, reply) => {
      await unlockAddress(db, requireActor(request).siteId, request.body.address);
      return reply.status(204).send();
    },
  );
  app.put(
    '/api/v1/operator/retention',
    { schema: { tags, body: retention, response: { 200: retention } }, config },
    (request) => setRetention(db, requireActor(request).siteId, request.body),
  );
}
