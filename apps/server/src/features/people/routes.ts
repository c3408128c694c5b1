import { accountsAnswer, id, peopleAnswer, personPage } from '@seatwell/contract';
import type { FastifyInstance } from 'fastify';
import type { ZodTypeProvider } from 'fastify-type-provider-zod';
import { z } from 'zod';
import { anyoneReads, type ReadParts, siteReading } from '../reading/reading.ts';
import { accounts } from './accounts.ts';
import { people, person } from './queries.ts';

const tags = ['People'];

/** People with their qualifications, and accounts with their roles. */
export async function peopleRoutes(instance: FastifyInstance, parts: ReadParts): Promise<void> {
  const app = instance.withTypeProvider<ZodTypeProvider>();
  app.get('/api/v1/people', { schema: { tags, response: { 200: peopleAnswer } }, config: anyoneReads }, (request) =>
    people(siteReading(parts, request)),
  );
  app.get(
    '/api/v1/people/:personId',
    { schema: { tags, params: z.object({ personId: id }), response: { 200: personPage } }, config: anyoneReads },
    (request) => person(siteReading(parts, request), request.params.personId),
  );
  app.get(
    '/api/v1/accounts',
    { schema: { tags, response: { 200: accountsAnswer } }, config: { action: 'manage-accounts' } },
    (request) => accounts(siteReading(parts, request)),
  );
}
