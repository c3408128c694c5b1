import { id } from '@seatwell/contract';
import type { FastifyInstance } from 'fastify';
import type { ZodTypeProvider } from 'fastify-type-provider-zod';
import { z } from 'zod';
import type { Database } from '../../platform/database/pool.ts';
import { Problem } from '../../platform/errors/problem.ts';
import { requireActor } from '../../platform/sign-in/plugin.ts';

const job = z.object({
  jobId: id,
  kind: z.string(),
  state: z.enum(['waiting', 'running', 'done', 'failed']),
  done: z.int(),
  total: z.int(),
  result: z.unknown(),
  createdAt: z.string(),
  endedAt: z.string().nullable(),
});

/** How far a job is, and what came of it. */
export async function jobRoutes(instance: FastifyInstance, { db }: { db: Database }): Promise<void> {
  const app = instance.withTypeProvider<ZodTypeProvider>();
  app.get(
    '/api/v1/jobs/:jobId',
    {
      schema: { tags: ['Jobs'], params: z.object({ jobId: id }), response: { 200: job } },
      config: { action: 'signed-in' },
    },
    async (request) => {
      const actor = requireActor(request);
      const { rows } = await db.query<z.infer<typeof job>>(
        `SELECT job_id AS "jobId", kind, state, done, total, result, to_json(created_at)#>>'{}' AS "createdAt",
           to_json(ended_at)#>>'{}' AS "endedAt"
         FROM job WHERE site_id = $1 AND job_id = $2 AND started_by = $3`,
        [actor.siteId, request.params.jobId, actor.accountId],
      );
      const found = rows[0];
      if (!found) throw new Problem('not-found', 'You have started no such job.');
      return found;
    },
  );
}
