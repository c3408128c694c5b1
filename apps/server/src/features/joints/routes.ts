import {
  id,
  jointPage as jointPageAnswer,
  myJointsAnswer,
  registerAnswer,
  registerFilters,
  registerQuery,
  selectionAnswer,
  shutdownPayloads,
  targetPreview,
  tryAnswer,
  tryInput,
} from '@seatwell/contract';
import type { FastifyInstance } from 'fastify';
import type { ZodTypeProvider } from 'fastify-type-provider-zod';
import { z } from 'zod';
import { anyoneReads, inShutdown, type ReadParts, reading, recordsReads } from '../reading/reading.ts';
import { jointByTag, jointPage, jointState } from './joint-page.ts';
import { myJoints } from './my-joints.ts';
import { registerPage, registerSelection } from './register-queries.ts';
import { targetPreviewOf } from './target-preview.ts';
import { tryRecord } from './try-record.ts';

const tags = ['Joints'];
const ofMake = inShutdown.extend({ jointId: id, makeId: id });

/** The register, the joint page, my joints, and what would happen if something were recorded. */
export async function jointRoutes(instance: FastifyInstance, parts: ReadParts): Promise<void> {
  const app = instance.withTypeProvider<ZodTypeProvider>();
  const base = '/api/v1/shutdowns/:shutdownId';

  app.get(
    `${base}/joints`,
    {
      schema: { tags, params: inShutdown, querystring: registerQuery, response: { 200: registerAnswer } },
      config: anyoneReads,
    },
    async (request) => registerPage(await reading(parts, request, request.params), request.query),
  );
  app.get(
    `${base}/joints/selection`,
    {
      schema: { tags, params: inShutdown, querystring: registerFilters, response: { 200: selectionAnswer } },
      config: anyoneReads,
    },
    async (request) => registerSelection(await reading(parts, request, request.params), request.query),
  );
  app.get(
    `${base}/joints/by-tag/:tag`,
    {
      schema: { tags, params: inShutdown.extend({ tag: z.string().max(200) }), response: { 200: jointPageAnswer } },
      config: recordsReads,
    },
    async (request) => {
      const read = await reading(parts, request, request.params);
      return jointPage(read, await jointByTag(read, request.params.tag));
    },
  );
  app.get(
    `${base}/joints/:jointId`,
    {
      schema: { tags, params: inShutdown.extend({ jointId: id }), response: { 200: jointPageAnswer } },
      config: recordsReads,
    },
    async (request) => {
      const read = await reading(parts, request, request.params);
      return jointPage(read, await jointState(read, request.params.jointId));
    },
  );
  app.get(
    `${base}/my-joints`,
    { schema: { tags, params: inShutdown, response: { 200: myJointsAnswer } }, config: anyoneReads },
    async (request) => myJoints(await reading(parts, request, request.params)),
  );
  app.post(
    `${base}/joints/:jointId/makes/:makeId/target-preview`,
    {
      schema: { tags, params: ofMake, body: shutdownPayloads['target-approved'], response: { 200: targetPreview } },
      config: { action: 'use-calculation' },
    },
    async (request) => targetPreviewOf(await reading(parts, request, request.params), request.params, request.body),
  );
  app.post(
    `${base}/joints/:jointId/makes/:makeId/try/:type`,
    {
      schema: {
        tags,
        params: ofMake.extend({ type: z.string().max(60) }),
        body: tryInput,
        response: { 200: tryAnswer },
      },
      config: anyoneReads,
    },
    async (request) => tryRecord(await reading(parts, request, request.params), request.params, request.body),
  );
}
