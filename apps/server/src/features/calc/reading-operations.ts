import { judgeAlignmentReadings, judgeFace, mayRetighten } from '@seatwell/calc';
import {
  calcAlignmentRequest,
  calcFaceRequest,
  calcReadingsResponse,
  calcRetighteningRequest,
  calcRetighteningResponse,
} from '@seatwell/contract';
import type { FastifyInstance } from 'fastify';
import { CALC_EXAMPLES } from './examples.ts';
import { calcOperation } from './operation.ts';

/** Readings against their limits, and what a gasket allows later. */
export function readingOperations(app: FastifyInstance): void {
  calcOperation(app, {
    path: '/face',
    summary: 'Flatness and imperfections of a face against their limits',
    body: calcFaceRequest,
    answer: calcReadingsResponse,
    example: CALC_EXAMPLES.face,
    run: (readings) => ({ readings: judgeFace(readings), warnings: [] }),
  });
  calcOperation(app, {
    path: '/alignment',
    summary: 'Alignment and gap readings against their limits',
    body: calcAlignmentRequest,
    answer: calcReadingsResponse,
    example: CALC_EXAMPLES.alignment,
    run: (readings) => ({ readings: judgeAlignmentReadings(readings), warnings: [] }),
  });
  calcOperation(app, {
    path: '/retightening',
    summary: 'Whether a gasket may be retightened now',
    body: calcRetighteningRequest,
    answer: calcRetighteningResponse,
    example: CALC_EXAMPLES.retightening,
    run: (request) => ({ ...mayRetighten(request), warnings: [] }),
  });
}
