import { answerSimulation, type SimulationAnswerRequest } from '@seatwell/calc';
import { simulationAnswer, simulationRequest } from '@seatwell/contract';
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';

/** A long sequence of a large flange is about 100 kB of JSON. */
const LARGEST_BODY = 512 * 1024;

/** Tightening simulation; refusals of the calculation become 422 in the error handler. */
export const simulationRoutes: FastifyPluginAsyncZod = async (app) => {
  app.post(
    '/api/v1/calc/simulation',
    {
      bodyLimit: LARGEST_BODY,
      config: { action: 'use-calculation' },
      schema: {
        summary: 'Simulate tightening: every bolt load after every step',
        tags: ['calculation'],
        body: simulationRequest,
        response: { 200: simulationAnswer },
      },
    },
    // The schema's optional fields admit undefined; left out and undefined mean the same to the calculation.
    async (request) => answerSimulation(request.body as SimulationAnswerRequest),
  );
};
