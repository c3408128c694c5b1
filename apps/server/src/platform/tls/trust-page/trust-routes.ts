import type { FastifyInstance } from 'fastify';
import type { TrustedAuthority } from '../tls-source.ts';
import { AUTHORITY_FILE, authorityFile, TRUST_PAGE, trustPage } from './trust-page.ts';

/** The page that tells how to trust the local authority, and its certificate; public, before anybody signs in. */
export async function trustRoutes(app: FastifyInstance, authority: TrustedAuthority): Promise<void> {
  app.get(TRUST_PAGE, async (request, reply) => {
    const { headers, body } = trustPage(authority, '/', request.headers['accept-language']);
    return reply.headers(headers).send(body);
  });
  app.get(AUTHORITY_FILE, async (_request, reply) => {
    const { headers, body } = authorityFile(authority);
    return reply.headers(headers).send(body);
  });
}
