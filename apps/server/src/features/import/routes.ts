import {
  id,
  importChoices,
  importConfirmation,
  importDraft,
  importOutcome,
  importPreview,
  importProblemsPage,
  importReading,
  importRowsPage,
  importStarted,
  importState,
} from '@seatwell/contract';
import type { FastifyInstance, FastifyRequest } from 'fastify';
import type { ZodTypeProvider } from 'fastify-type-provider-zod';
import { z } from 'zod';
import { requireAllowed } from '../../platform/access/allows.ts';
import { requireActor } from '../../platform/sign-in/plugin.ts';
import type { RecordingParts } from '../recording/record-command.ts';
import { loadShutdown } from '../shutdowns/load-shutdown.ts';
import { startImport } from './confirm.ts';
import { createDraft, loadDraft } from './drafts.ts';
import { previewImport } from './preview.ts';
import { previewProblems, previewRows } from './preview-pages.ts';
import { giveUpReading, readingUnderWay, startReading } from './reading-job.ts';
import { sampleRegisterCsv } from './sample-register.ts';
import { uploadedFile } from './uploaded-file.ts';

const inShutdown = z.object({ shutdownId: id });
const ofImport = z.object({ shutdownId: id, importId: id });
const cursor = z.coerce.number().int().min(0).max(10_000_000).default(0);
const tags = ['Import'];
const config = { action: 'import-register' as const };

/** The import of a register: file, choices, preview, confirmation. Nothing is recorded before the last. */
export async function importRoutes(instance: FastifyInstance, parts: RecordingParts): Promise<void> {
  const app = instance.withTypeProvider<ZodTypeProvider>();
  const { db } = parts;
  const actorIn = async (request: FastifyRequest, shutdownId: string) => {
    const actor = requireActor(request);
    requireAllowed(actor, 'import-register', { shutdownId });
    await loadShutdown(db, actor.siteId, shutdownId);
    return actor;
  };

  app.get(
    '/api/v1/shutdowns/:shutdownId/imports/sample',
    { schema: { tags, summary: 'a sample register as CSV', params: inShutdown }, config },
    async (_request, reply) =>
      reply
        .header('content-type', 'text/csv; charset=utf-8')
        .header('content-disposition', 'attachment; filename="sample-register.csv"')
        .send(sampleRegisterCsv()),
  );

  app.post(
    '/api/v1/shutdowns/:shutdownId/imports',
    {
      schema: {
        tags,
        summary: 'keep a CSV or XLSX file for import (multipart, one file)',
        consumes: ['multipart/form-data'],
        params: inShutdown,
        response: { 200: importDraft },
      },
      config,
    },
    async (request) => {
      const { shutdownId } = request.params;
      const actor = await actorIn(request, shutdownId);
      return createDraft(db, actor, shutdownId, await uploadedFile(request));
    },
  );

  app.get(
    '/api/v1/shutdowns/:shutdownId/imports/:importId',
    { schema: { tags, params: ofImport, response: { 200: importState } }, config },
    async (request) => {
      const { shutdownId, importId } = request.params;
      const actor = await actorIn(request, shutdownId);
      const draft = await loadDraft(db, actor.siteId, shutdownId, importId);
      return {
        ...draft.choices.list,
        preview: draft.preview?.shown ?? null,
        readingJobId: await readingUnderWay(db, actor, importId),
      };
    },
  );

  app.put(
    '/api/v1/shutdowns/:shutdownId/imports/:importId/choices',
    {
      schema: {
        tags,
        summary: 'choose sheet, columns and answers; answers what confirming would do',
        params: ofImport,
        body: importChoices,
        response: { 200: importPreview },
      },
      config,
    },
    async (request) => {
      const { shutdownId, importId } = request.params;
      const actor = await actorIn(request, shutdownId);
      return previewImport(db, actor.siteId, shutdownId, importId, request.body);
    },
  );

  app.post(
    '/api/v1/shutdowns/:shutdownId/imports/:importId/readings',
    {
      schema: {
        tags,
        summary: 'the same as the choices, for a long file: answers the job, whose end brings the preview',
        params: ofImport,
        body: importChoices,
        response: { 200: importReading },
      },
      config,
    },
    async (request) => {
      const { shutdownId, importId } = request.params;
      const actor = await actorIn(request, shutdownId);
      return startReading(db, actor, shutdownId, importId, request.body);
    },
  );

  app.delete(
    '/api/v1/shutdowns/:shutdownId/imports/:importId/readings',
    {
      schema: { tags, summary: 'give up the reading under way; the preview before it stays', params: ofImport },
      config,
    },
    async (request, reply) => {
      const { shutdownId, importId } = request.params;
      const actor = await actorIn(request, shutdownId);
      await loadDraft(db, actor.siteId, shutdownId, importId);
      await giveUpReading(db, actor.siteId, importId);
      return reply.status(204).send();
    },
  );

  app.get(
    '/api/v1/shutdowns/:shutdownId/imports/:importId/problems',
    {
      schema: { tags, params: ofImport, querystring: z.object({ cursor }), response: { 200: importProblemsPage } },
      config,
    },
    async (request) => {
      const { shutdownId, importId } = request.params;
      const actor = await actorIn(request, shutdownId);
      return previewProblems(db, actor.siteId, shutdownId, importId, request.query);
    },
  );

  app.get(
    '/api/v1/shutdowns/:shutdownId/imports/:importId/rows',
    {
      schema: {
        tags,
        params: ofImport,
        querystring: z.object({ kind: importOutcome.nullable().default(null), cursor }),
        response: { 200: importRowsPage },
      },
      config,
    },
    async (request) => {
      const { shutdownId, importId } = request.params;
      const actor = await actorIn(request, shutdownId);
      return previewRows(db, actor.siteId, shutdownId, importId, request.query);
    },
  );

  app.post(
    '/api/v1/shutdowns/:shutdownId/imports/:importId/confirm',
    {
      schema: {
        tags,
        summary: 'record what the preview showed, all or nothing; answers the job',
        params: ofImport,
        body: importConfirmation,
        response: { 200: importStarted },
      },
      config,
    },
    async (request) => {
      const { shutdownId, importId } = request.params;
      const actor = await actorIn(request, shutdownId);
      return startImport(parts, actor, shutdownId, importId, request.body);
    },
  );
}
