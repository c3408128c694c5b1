import type { TargetRequest } from '../src/index.ts';

/** NPS 8 class 300, spiral wound; the gasket's limits are invented for tests. */
export const EXAMPLE_TARGET: TargetRequest = {
  flange: { standard: 'ASME-B16.5', size: 'NPS8', rating: '300' },
  gasket: {
    family: 'spiral-wound',
    contactOutside_mm: 263.7,
    contactInside_mm: 233.4,
    limits: { seating_MPa: 50, operating_MPa: 20, target_MPa: 90, maximum_MPa: 200, source: 'test data' },
  },
  bolting: { grade: 'B7', condition: 'new' },
  service: { pressure_MPa: 3, temperature_C: 100 },
  lubricant: { nutFactor: 0.16, source: 'test data' },
  method: 'torque-wrench',
  area: 'root',
  policy: { minimumBoltUtilisation: 0.2, maximumBoltUtilisation: 0.6, scatter_percent: 20, remainingShare: 0.7 },
};
