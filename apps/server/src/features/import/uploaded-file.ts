import type { FastifyRequest } from 'fastify';
import { Problem } from '../../platform/errors/problem.ts';
import { fileRefused } from './drafts.ts';
import { megabytes, readingLimits } from './reading/reading-result.ts';

const LONGEST_NAME = 200;

/**
 * The one file of a multipart request.
 * @throws Problem `file-refused` beyond the size limit, `bad-input` without a file
 */
export async function uploadedFile(request: FastifyRequest): Promise<{ name: string; bytes: Buffer }> {
  if (!request.isMultipart())
    throw new Problem('media-type-refused', 'Send the file as multipart/form-data, one file in it.');
  const part = await request.file({ limits: { fileSize: readingLimits.fileBytes, files: 1 } });
  if (!part) throw new Problem('bad-input', 'Send one file as multipart/form-data.');
  const parts: Buffer[] = [];
  // Read to its end even beyond the limit, so that the sender gets the answer and not a broken connection.
  for await (const chunk of part.file) if (!part.file.truncated) parts.push(chunk as Buffer);
  if (part.file.truncated) {
    const limit = megabytes(readingLimits.fileBytes);
    throw fileRefused({
      code: 'file-too-large',
      message: `The file has more than ${limit}, at most ${limit} are read. Remove pictures and other sheets, or split it.`,
    });
  }
  const name = (part.filename || 'register').replaceAll(/[\p{Cc}\p{Cf}]/gu, '').slice(-LONGEST_NAME);
  return { name, bytes: Buffer.concat(parts) };
}
