import { targetSensitivities, targetTable, weakStandardJoints } from '@seatwell/calc';
import {
  calcSensitivitiesResponse,
  calcTargetRequest,
  calcTargetTableRequest,
  calcTargetTableResponse,
  calcWeakJointsRequest,
  calcWeakJointsResponse,
} from '@seatwell/contract';
import type { FastifyInstance } from 'fastify';
import { CALC_EXAMPLES } from './examples.ts';
import { calcOperation } from './operation.ts';

/** What a window depends on, and calculations over many standard joints at once. */
export function familyOperations(app: FastifyInstance): void {
  calcOperation(app, {
    path: '/sensitivities',
    summary: 'How window and target answer to each input',
    body: calcTargetRequest,
    answer: calcSensitivitiesResponse,
    example: CALC_EXAMPLES.sensitivities,
    run: (request) => ({ sensitivities: targetSensitivities({ request }), warnings: [] }),
  });
  calcOperation(app, {
    path: '/target-table',
    summary: 'One calculation for a family of standard joints',
    body: calcTargetTableRequest,
    answer: calcTargetTableResponse,
    example: CALC_EXAMPLES.targetTable,
    run: (request) => ({ rows: targetTable(request), warnings: [] }),
  });
  calcOperation(app, {
    path: '/weak-joints',
    summary: 'Standard joints whose bolts do not bring the gasket to a stress',
    body: calcWeakJointsRequest,
    answer: calcWeakJointsResponse,
    example: CALC_EXAMPLES.weakJoints,
    run: (request) => ({ joints: weakStandardJoints(request), warnings: [] }),
  });
}
