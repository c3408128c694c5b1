import { answerSimulation, type SimulationAnswerRequest } from '@seatwell/calc';
import { simulationAnswer, simulationRequest } from '@seatwell/contract';
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { CALC_EXAMPLES } from '../calc/examples.ts';
import { calcOperation } from '../calc/operation.ts';

/** A long sequence of a large flange is about 100 kB of JSON. */
const LARGEST_BODY = 512 * 1024;

/** Tightening simulation; refusals of the calculation become 422 in the error handler. */
export const simulationRoutes: FastifyPluginAsyncZod = async (app) => {
  calcOperation(app, {
    path: '/simulation',
    summary: 'Simulate tightening: every bolt load after every step',
    bodyLimit: LARGEST_BODY,
    body: simulationRequest,
    answer: simulationAnswer,
    example: CALC_EXAMPLES.simulation,
    // The schema's optional fields admit undefined; left out and undefined mean the same to the calculation.
    run: (request) => answerSimulation(request as SimulationAnswerRequest),
  });
};
