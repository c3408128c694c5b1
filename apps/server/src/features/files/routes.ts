import { fileHash } from '@seatwell/contract';
import type { FastifyInstance } from 'fastify';
import type { ZodTypeProvider } from 'fastify-type-provider-zod';
import { z } from 'zod';
import type { Database } from '../../platform/database/pool.ts';
import { Problem } from '../../platform/errors/problem.ts';
import { requireActor } from '../../platform/sign-in/plugin.ts';
import { LARGEST_FILE, openFile, storeFile } from './store-file.ts';

/** Photos and certificates, by the hash of their content. */
export async function fileRoutes(instance: FastifyInstance, { db }: { db: Database }): Promise<void> {
  const app = instance.withTypeProvider<ZodTypeProvider>();

  app.post(
    '/api/v1/files',
    {
      schema: {
        tags: ['Files'],
        summary: 'store a photo or a PDF (multipart, one file)',
        consumes: ['multipart/form-data'],
        response: { 200: z.object({ hash: fileHash, mediaType: z.string(), size: z.int() }) },
      },
      config: { action: 'upload-file' },
    },
    async (request) => {
      const part = await request.file({ limits: { fileSize: LARGEST_FILE, files: 1 } });
      if (!part) throw new Problem('bad-input', 'Send one file as multipart/form-data.');
      return storeFile(db, requireActor(request).siteId, await part.toBuffer());
    },
  );

  app.get(
    '/api/v1/files/:hash',
    { schema: { tags: ['Files'], params: z.object({ hash: fileHash }) }, config: { action: 'read-records' } },
    async (request, reply) => {
      const { mediaType, size, content } = await openFile(db, requireActor(request).siteId, request.params.hash);
      return reply
        .header('content-type', mediaType)
        .header('content-length', size)
        .header('content-disposition', 'inline')
        .header('cache-control', 'private, max-age=31536000, immutable')
        .send(content);
    },
  );
}
