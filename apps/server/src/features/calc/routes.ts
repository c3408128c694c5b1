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
import { CALC_EXAMPLES } from './examples.ts';
import { familyOperations } from './family-operations.ts';
import { calcOperation } from './operation.ts';
import { readingOperations } from './reading-operations.ts';
import { refuseBadInput } from './refuse-bad-input.ts';

const action = 'use-calculation';
const tags = ['calculation'];

const heldFlanges = () => ({
  standards: FLANGE_STANDARDS.map((standard) => ({
    standard,
    sizes: listFlangeSizes(standard).map((size) => ({ size, ratings: listFlangeRatings(standard, size) })),
  })),
});

/** The calculation over HTTP, under `/api/v1/calc`. Refusals of the calculation are thrown as they are. */
export const calcRoutes: FastifyPluginAsyncZod = async (app) => {
  refuseBadInput(app);

  app.get(
    '/api/v1/calc/flanges',
    {
      config: { action, example: () => ({ answer: heldFlanges() }) },
      schema: { tags, summary: 'Standards, sizes and ratings held', response: { 200: calcFlangeListResponse } },
    },
    async () => heldFlanges(),
  );

  app.get(
    '/api/v1/calc/flanges/:standard/:size/:rating',
    {
      config: { action, example: () => ({ answer: calcFlangeResponse.parse(findFlange(CALC_EXAMPLES.flange)) }) },
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

  calcOperation(app, {
    path: '/thread',
    summary: 'Areas of a thread',
    body: calcThreadRequest,
    answer: calcThreadResponse,
    example: CALC_EXAMPLES.thread,
    run: threadGeometry,
  });
  calcOperation(app, {
    path: '/torque',
    summary: 'Torque of a load, or load of a torque',
    body: calcTorqueRequest,
    answer: calcTorqueResponse,
    example: CALC_EXAMPLES.torque,
    run: torqueOrLoad,
  });
  calcOperation(app, {
    path: '/assembly-load',
    summary: 'Assembly preload after VDI 2230',
    body: calcAssemblyLoadRequest,
    answer: calcAssemblyLoadResponse,
    example: CALC_EXAMPLES.assemblyLoad,
    run: assemblyLoad,
  });
  calcOperation(app, {
    path: '/sequence',
    summary: 'Tightening or loosening sequence',
    body: calcSequenceRequest,
    answer: calcSequenceResponse,
    example: CALC_EXAMPLES.sequence,
    run: tighteningSequence,
  });
  calcOperation(app, {
    path: '/gasket-loads',
    summary: 'Bolt loads of the code',
    body: calcGasketLoadsRequest,
    answer: calcGasketLoadsResponse,
    example: CALC_EXAMPLES.gasketLoads,
    run: gasketLoads,
  });
  calcOperation(app, {
    path: '/target',
    summary: 'Target window, target and tool setting',
    body: calcTargetRequest,
    answer: calcTargetResponse,
    example: CALC_EXAMPLES.target,
    run: targetWindow,
  });
  calcOperation(app, {
    path: '/flange-stress',
    summary: 'Flange stresses of the code',
    body: calcFlangeStressRequest,
    answer: calcFlangeStressResponse,
    example: CALC_EXAMPLES.flangeStress,
    run: flangeStress,
  });
  calcOperation(app, {
    path: '/elongation',
    summary: 'Elongation of a bolt',
    body: calcElongationRequest,
    answer: calcElongationResponse,
    example: CALC_EXAMPLES.elongation,
    run: elongation,
  });
  calcOperation(app, {
    path: '/tensioner',
    summary: 'Pressure of a bolt tensioner',
    body: calcTensionerRequest,
    answer: calcTensionerResponse,
    example: CALC_EXAMPLES.tensioner,
    run: tensioner,
  });
  calcOperation(app, {
    path: '/pneumatic-test',
    summary: 'Stored energy and distance of a gas test',
    body: calcPneumaticTestRequest,
    answer: calcPneumaticTestResponse,
    example: CALC_EXAMPLES.pneumaticTest,
    run: pneumaticTest,
  });
  familyOperations(app);
  readingOperations(app);
};
