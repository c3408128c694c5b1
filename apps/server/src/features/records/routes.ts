import { Readable } from 'node:stream';
import { id, recordHead, recordKeys as recordKeysAnswer } from '@seatwell/contract';
import type { FastifyInstance, FastifyReply } from 'fastify';
import type { ZodTypeProvider } from 'fastify-type-provider-zod';
import { z } from 'zod';
import { Problem } from '../../platform/errors/problem.ts';
import { requireActor } from '../../platform/sign-in/plugin.ts';
import type { Clock } from '../recording/record-command.ts';
import { loadShutdown } from '../shutdowns/load-shutdown.ts';
import { jointRecord } from './joint-record.ts';
import { answeredHead, recordKeys, type SigningParts, signedHeadFile } from './signed-head.ts';
import { recordLines } from './stream-record.ts';

const tags = ['Record'];

const asFile = (reply: FastifyReply, name: string): FastifyReply =>
  reply.header('content-disposition', `attachment; filename="${name}"`).header('cache-control', 'no-store');

/** Records to be checked offline, by apps/server/record-verifier.mjs or anybody's own program. */
export async function recordRoutes(
  instance: FastifyInstance,
  { db, signer, clock }: SigningParts & { readonly clock: Clock },
): Promise<void> {
  const app = instance.withTypeProvider<ZodTypeProvider>();
  const parts = { db, signer };
  const now = () => clock().toISOString();

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
      return reply.send(Readable.from(recordLines(parts, siteId, { streamId: shutdownId, name }, now())));
    },
  );
  app.get(
    '/api/v1/site/record',
    { schema: { summary: 'The whole record of the site, line by line', tags }, config: { action: 'operate' } },
    async (request, reply) => {
      const { siteId } = requireActor(request);
      asFile(reply, `record-${siteId}.jsonl`).type('application/jsonl; charset=utf-8');
      return reply.send(Readable.from(recordLines(parts, siteId, { streamId: siteId, name: 'site' }, now())));
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
      const record = await jointRecord(parts, { siteId, ...request.params, now: now() });
      return asFile(reply, `record-${record.jointId}.json`).send(record);
    },
  );
  app.get(
    '/api/v1/shutdowns/:shutdownId/record/head',
    {
      schema: {
        summary: 'Length of the record and root of its Merkle tree, signed where the server has a key',
        tags,
        params: z.object({ shutdownId: id }),
        response: { 200: recordHead },
      },
      config: { action: 'read-register' },
    },
    async (request) => {
      const { siteId } = requireActor(request);
      const { shutdownId: streamId } = await loadShutdown(db, siteId, request.params.shutdownId);
      return answeredHead(parts, { siteId, streamId });
    },
  );
  await signedHeadRoutes(instance, parts);
}

const note = z.string().describe('a checkpoint in a signed note (C2SP tlog-checkpoint, signed-note)');

/** Signed heads as files that a witness can keep, and the public keys to check them with. */
async function signedHeadRoutes(instance: FastifyInstance, parts: SigningParts): Promise<void> {
  const app = instance.withTypeProvider<ZodTypeProvider>();
  const send = async (reply: FastifyReply, stream: { readonly siteId: string; readonly streamId: string }) => {
    const file = await signedHeadFile(parts, stream);
    return asFile(reply, file.name).type('text/plain; charset=utf-8').send(file.note);
  };
  const text = (schema: z.ZodType) => ({ 200: { content: { 'text/plain': { schema } } } });

  app.get(
    '/api/v1/shutdowns/:shutdownId/record/signed-head',
    {
      schema: {
        summary: 'The signed head of a shutdown’s record, to be kept by a witness',
        tags,
        params: z.object({ shutdownId: id }),
        response: text(note),
      },
      config: { action: 'read-register' },
    },
    async (request, reply) => {
      const { siteId } = requireActor(request);
      const { shutdownId: streamId } = await loadShutdown(parts.db, siteId, request.params.shutdownId);
      return send(reply, { siteId, streamId });
    },
  );
  app.get(
    '/api/v1/site/record/signed-head',
    {
      schema: { summary: 'The signed head of the site’s record', tags, response: text(note) },
      config: { action: 'operate' },
    },
    async (request, reply) => {
      const { siteId } = requireActor(request);
      return send(reply, { siteId, streamId: siteId });
    },
  );
  app.get(
    '/api/v1/record-keys',
    {
      schema: {
        summary: 'The public keys that signed heads of the record',
        description:
          'A key that comes with what it signed proves nothing: compare its fingerprint with one told elsewhere.',
        tags,
        response: { 200: recordKeysAnswer },
      },
      config: { action: 'read-register' },
    },
    () => recordKeys(parts.signer),
  );
  app.get(
    '/api/v1/record-keys/public.pem',
    {
      schema: {
        summary: 'The public key that signs heads of the record now',
        tags,
        response: { 200: { content: { 'application/x-pem-file': { schema: z.string() } } } },
      },
      config: { action: 'read-register' },
    },
    async (_request, reply) => {
      const { key, unsigned } = await parts.signer.signing();
      if (!key) throw new Problem('head-unsigned', unsigned);
      const pem = key.publicKey.export({ format: 'pem', type: 'spki' }) as string;
      return asFile(reply, 'record-key.pem').type('application/x-pem-file').send(pem);
    },
  );
}
