import {
  type BatchAnswer,
  batchAnswer,
  batchEnvelope,
  commandAnswer,
  commandEnvelope,
  type EventType,
  id,
  shutdownPayloads,
  sitePayloads,
} from '@seatwell/contract';
import { actionFor, CATALOGUE } from '@seatwell/workflow';
import type { FastifyInstance } from 'fastify';
import type { ZodTypeProvider } from 'fastify-type-provider-zod';
import type { ZodType } from 'zod';
import { z } from 'zod';
import { requireActor } from '../../platform/sign-in/plugin.ts';
import type { Batch } from './record-batch.ts';
import { prepareBatch, recordBatch } from './record-batch.ts';
import { type Command, type RecordingParts, recordCommand } from './record-command.ts';

const inShutdown = z.object({ shutdownId: id });

/** Lists longer than this become a job, so that the request answers at once. */
const ROWS_BEFORE_JOB = 500;

export type StartBatchJob = (
  actor: ReturnType<typeof requireActor>,
  shutdownId: string,
  type: EventType,
  batch: Batch,
  prepared: { readonly hash: Buffer; readonly signed: boolean },
) => Promise<string>;

/** One route per event type, so that each has its own schema, action and page in the documentation. */
export async function recordingRoutes(
  instance: FastifyInstance,
  { parts, startBatchJob }: { parts: RecordingParts; startBatchJob: StartBatchJob },
): Promise<void> {
  const app = instance.withTypeProvider<ZodTypeProvider>();
  for (const type of Object.keys(sitePayloads) as EventType[]) {
    app.post(
      `/api/v1/site/commands/${type}`,
      { schema: commandSchema(type, sitePayloads), config: configOf(type) },
      (request) => recordCommand(parts, requireActor(request), { shutdownId: null }, type, request.body as Command),
    );
  }
  for (const type of Object.keys(shutdownPayloads) as EventType[]) {
    app.post(
      `/api/v1/shutdowns/:shutdownId/commands/${type}`,
      { schema: { ...commandSchema(type, shutdownPayloads), params: inShutdown }, config: configOf(type) },
      (request) => recordCommand(parts, requireActor(request), request.params, type, request.body as Command),
    );
    if (!CATALOGUE[type].batchable || CATALOGUE[type].subject === 'pack' || CATALOGUE[type].subject === 'blind')
      continue;
    if (type === 'joint-listed') continue;
    app.post(
      `/api/v1/shutdowns/:shutdownId/lists/${type}`,
      {
        schema: {
          summary: `${CATALOGUE[type].effect} (a list)`,
          tags: ['Record'],
          params: inShutdown,
          body: batchEnvelope((shutdownPayloads as Record<string, ZodType>)[type] as ZodType),
          response: { 200: batchAnswer },
        },
        config: configOf(type),
        bodyLimit: 32 * 1024 * 1024,
      },
      async (request): Promise<BatchAnswer> => {
        const actor = requireActor(request);
        const { shutdownId } = request.params;
        const batch = request.body as Batch;
        const prepared = await prepareBatch(parts, actor, shutdownId, type, batch);
        if (prepared.earlier) return prepared.earlier;
        if (batch.rows.length <= ROWS_BEFORE_JOB) return recordBatch(parts, actor, shutdownId, type, batch, prepared);
        const jobId = await startBatchJob(actor, shutdownId, type, batch, prepared);
        return { eventId: batch.eventId, sequence: null, recordedAt: null, recorded: 0, refused: [], jobId };
      },
    );
  }
}

const configOf = (type: EventType) => ({ action: actionFor(type, { level: 'self' }) });

const commandSchema = (type: EventType, payloads: Readonly<Record<string, ZodType>>) => ({
  summary: CATALOGUE[type].effect,
  tags: ['Record'],
  body: commandEnvelope(payloads[type] as ZodType),
  response: { 200: commandAnswer },
});
