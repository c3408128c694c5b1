import {
  assemblyLoad,
  elongation,
  FLANGE_STANDARDS,
  findFlange,
  flangeStress,
  gasketLoads,
  listFlangeRatings,
  listFlangeSizes,
  pneumaticTest,
  targetWindow,
  tensioner,
  threadGeometry,
  tighteningSequence,
  torqueOrLoad,
} from '@seatwell/calc';
import {
  calcAssemblyLoadRequest,
  calcAssemblyLoadResponse,
  calcElongationRequest,
  calcElongationResponse,
  calcFlangeListResponse,
  calcFlangeParams,
  calcFlangeQuery,
  calcFlangeResponse,
  calcFlangeStressRequest,
  calcFlangeStressResponse,
  calcGasketLoadsRequest,
  calcGasketLoadsResponse,
  calcPneumaticTestRequest,
  calcPneumaticTestResponse,
  calcSequenceRequest,
  calcSequenceResponse,
  calcTargetRequest,
  calcTargetResponse,
  calcTensionerRequest,
  calcTensionerResponse,
  calcThreadRequest,
  calcThreadResponse,
  calcTorqueRequest,
  calcTorqueResponse,
} from '@seatwell/contract';
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { refuseBadInput } from './refuse-bad-input.ts';

const config = { action: 'use-calculation' } as const;
const tags = ['calculation'];

/** The calculation over HTTP, under `/api/v1/calc`. Refusals of the calculation are thrown as they are. */
export const calcRoutes: FastifyPluginAsyncZod = async (app) => {
  refuseBadInput(app);

  app.get(
    '/api/v1/calc/flanges',
    {
      config,
      schema: { tags, summary: 'Standards, sizes and ratings held', response: { 200: calcFlangeListResponse } },
    },
    async () => ({
      standards: FLANGE_STANDARDS.map((standard) => ({
        standard,
        sizes: listFlangeSizes(standard).map((size) => ({ size, ratings: listFlangeRatings(standard, size) })),
      })),
    }),
  );

  app.get(
    '/api/v1/calc/flanges/:standard/:size/:rating',
    {
      config,
      schema: {
        tags,
        summary: 'A flange of a standard',
        params: calcFlangeParams,
        querystring: calcFlangeQuery,
        response: { 200: calcFlangeResponse },
      },
    },
    async ({ params, query }) => findFlange({ ...params, ...query }),
  );

  app.post(
    '/api/v1/calc/thread',
    {
      config,
      schema: { tags, summary: 'Areas of a thread', body: calcThreadRequest, response: { 200: calcThreadResponse } },
    },
    async ({ body }) => threadGeometry(body),
  );

  app.post(
    '/api/v1/calc/torque',
    {
      config,
      schema: {
        tags,
        summary: 'Torque of a load, or load of a torque',
        body: calcTorqueRequest,
        response: { 200: calcTorqueResponse },
      },
    },
    async ({ body }) => torqueOrLoad(body),
  );

  app.post(
    '/api/v1/calc/assembly-load',
    {
      config,
      schema: {
        tags,
        summary: 'Assembly preload after VDI 2230',
        body: calcAssemblyLoadRequest,
        response: { 200: calcAssemblyLoadResponse },
      },
    },
    async ({ body }) => assemblyLoad(body),
  );

  app.post(
    '/api/v1/calc/sequence',
    {
      config,
      schema: {
        tags,
        summary: 'Tightening or loosening sequence',
        body: calcSequenceRequest,
        response: { 200: calcSequenceResponse },
      },
    },
    async ({ body }) => tighteningSequence(body),
  );

  app.post(
    '/api/v1/calc/gasket-loads',
    {
      config,
      schema: {
        tags,
        summary: 'Bolt loads of the code',
        body: calcGasketLoadsRequest,
        response: { 200: calcGasketLoadsResponse },
      },
    },
    async ({ body }) => gasketLoads(body),
  );

  app.post(
    '/api/v1/calc/target',
    {
      config,
      schema: {
        tags,
        summary: 'Target window, target and tool setting',
        body: calcTargetRequest,
        response: { 200: calcTargetResponse },
      },
    },
    async ({ body }) => targetWindow(body),
  );

  app.post(
    '/api/v1/calc/flange-stress',
    {
      config,
      schema: {
        tags,
        summary: 'Flange stresses of the code',
        body: calcFlangeStressRequest,
        response: { 200: calcFlangeStressResponse },
      },
    },
    async ({ body }) => flangeStress(body),
  );

  app.post(
    '/api/v1/calc/elongation',
    {
      config,
      schema: {
        tags,
        summary: 'Elongation of a bolt',
        body: calcElongationRequest,
        response: { 200: calcElongationResponse },
      },
    },
    async ({ body }) => elongation(body),
  );

  app.post(
    '/api/v1/calc/tensioner',
    {
      config,
      schema: {
        tags,
        summary: 'Pressure of a bolt tensioner',
        body: calcTensionerRequest,
        response: { 200: calcTensionerResponse },
      },
    },
    async ({ body }) => tensioner(body),
  );

  app.post(
    '/api/v1/calc/pneumatic-test',
    {
      config,
      schema: {
        tags,
        summary: 'Stored energy and distance of a gas test',
        body: calcPneumaticTestRequest,
        response: { 200: calcPneumaticTestResponse },
      },
    },
    async ({ body }) => pneumaticTest(body),
  );
};
