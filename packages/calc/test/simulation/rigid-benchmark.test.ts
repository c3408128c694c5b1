import { describe, expect, it } from 'vitest';
import { simulateTightening } from '../../src/index.ts';
import { bondedGasket } from './support/joints.ts';

// A rigid flange on a linear gasket at the bolt circle, K = diag(Kg, Kg·R²/2, Kg·R²/2), four bolts, target 1,
// one visit of the order. Values from closed algebra, to five digits.
const BENCHMARK = [
  { ratio: 0.2, order: [1, 3, 2, 4], loads: [0.9504, 1.04762, 0.90693, 1] },
  { ratio: 0.2, order: [1, 2, 3, 4], loads: [0.95436, 1.00216, 0.95238, 1] },
  { ratio: 1, order: [1, 3, 2, 4], loads: [0.77619, 1.2, 0.63333, 1] },
  { ratio: 1, order: [1, 2, 3, 4], loads: [0.82381, 1.03333, 0.8, 1] },
];

const RADIUS = 200;
const WIDTH = 0.02;
const GASKET_N_PER_MM = 1e6;

describe('a rigid flange with four bolts', () => {
  it.each(BENCHMARK)(
    'ends at the loads of the closed algebra, nb·kb/Kg = $ratio, order $order',
    ({ ratio, order, loads }) => {
      const area = 2 * Math.PI * RADIUS * WIDTH;
      const bolt_N_per_mm = (ratio * GASKET_N_PER_MM) / 4;
      const target_N = 1000;
      const { loads_percent } = simulateTightening({
        joint: {
          ring: { radius_mm: RADIUS, bendingStiffness_Nmm2: 1e16, torsionStiffness_Nmm2: 1e16 },
          boltCount: 4,
          nutsClear: true,
          boltCircle_mm: 2 * RADIUS,
          boltLength_mm: 100,
          boltArea_mm2: (bolt_N_per_mm * 100) / 200_000,
          boltCompliance_mm_per_N: 0,
          faceCompliance_mm3_per_N: 0,
          gasket: {
            contactInside_mm: 2 * RADIUS - WIDTH,
            contactOutside_mm: 2 * RADIUS + WIDTH,
            curve: bondedGasket(GASKET_N_PER_MM / area),
          },
        },
        target_N,
        passes: [{ percent: 100, steps: order.map((bolt) => [bolt]) }],
        // A ring this stiff shows what little strain the elements give a rigid tilt: take more of them.
        choices: { stationsPerBolt: 48 },
      });
      for (const [bolt, load] of loads.entries()) expect(loads_percent[bolt]! / 100).toBeCloseTo(load, 4);
    },
  );
});
