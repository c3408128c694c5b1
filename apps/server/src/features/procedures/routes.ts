import {
  gasketDataAnswer,
  lubricantsAnswer,
  makerTorquesAnswer,
  proceduresAnswer,
  targetTablesAnswer,
} from '@seatwell/contract';
import type { FastifyInstance } from 'fastify';
import type { ZodTypeProvider } from 'fastify-type-provider-zod';
import { anyoneReads, type ReadParts, siteReading } from '../reading/reading.ts';
import { gasketData, lubricants, makerTorques, procedures, targetTables } from './queries.ts';

const tags = ['Engineering'];

/** Procedures, target tables, and the entered data that targets stand on. */
export async function procedureRoutes(instance: FastifyInstance, parts: ReadParts): Promise<void> {
  const app = instance.withTypeProvider<ZodTypeProvider>();
  app.get(
    '/api/v1/procedures',
    { schema: { tags, response: { 200: proceduresAnswer } }, config: anyoneReads },
    (request) => procedures(siteReading(parts, request)),
  );
  app.get(
    '/api/v1/gasket-data',
    { schema: { tags, response: { 200: gasketDataAnswer } }, config: anyoneReads },
    (request) => gasketData(siteReading(parts, request)),
  );
  app.get(
    '/api/v1/lubricants',
    { schema: { tags, response: { 200: lubricantsAnswer } }, config: anyoneReads },
    (request) => lubricants(siteReading(parts, request)),
  );
  app.get(
    '/api/v1/maker-torques',
    { schema: { tags, response: { 200: makerTorquesAnswer } }, config: anyoneReads },
    (request) => makerTorques(siteReading(parts, request)),
  );
  app.get(
    '/api/v1/target-tables',
    { schema: { tags, response: { 200: targetTablesAnswer } }, config: anyoneReads },
    (request) => targetTables(siteReading(parts, request)),
  );
}
