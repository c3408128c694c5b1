import { longSimulationRuns } from '@seatwell/calc';
import { id, longSimulationRequest } from '@seatwell/contract';
import type { FastifyInstance } from 'fastify';
import type { ZodTypeProvider } from 'fastify-type-provider-zod';
import { uuidv7 } from 'uuidv7';
import { z } from 'zod';
import type { Database } from '../../platform/database/pool.ts';
import { startJob } from '../../platform/jobs/queue.ts';
import { requireActor } from '../../platform/sign-in/plugin.ts';
import { SIMULATION_JOB } from './long-run-job.ts';

/** Two hundred sequences of a large flange are about this much JSON. */
const LARGEST_BODY = 8 * 1024 * 1024;

/** Long runs as a job: progress and result at /api/v1/jobs/:jobId. */
export async function longRunRoutes(instance: FastifyInstance, { db }: { db: Database }): Promise<void> {
  const app = instance.withTypeProvider<ZodTypeProvider>();
  app.post(
    '/api/v1/calc/simulation/runs',
    {
      bodyLimit: LARGEST_BODY,
      config: { action: 'use-calculation' },
      schema: {
        summary: 'Simulate many sequences or many scattered runs as a job; ask /jobs/:jobId how far it is',
        tags: ['calculation'],
        body: longSimulationRequest,
        response: { 202: z.object({ jobId: id }) },
      },
    },
    async (request, reply) => {
      const { siteId, accountId } = requireActor(request);
      const jobId = await startJob(db, {
        siteId,
        jobId: uuidv7(),
        shutdownId: null,
        kind: SIMULATION_JOB,
        total: longSimulationRuns(request.body as Parameters<typeof longSimulationRuns>[0]),
        input: request.body,
        startedBy: accountId,
      });
      return reply.status(202).send({ jobId });
    },
  );
}
