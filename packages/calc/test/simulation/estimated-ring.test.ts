import { describe, expect, it } from 'vitest';
import { estimatedRing } from '../../src/index.ts';

/** A made-up flange of round dimensions: b = 100, Rc = 250, g1 = 40, g0 = 10, h = 100, rg = 230, w = 20 mm. */
const FLANGE = {
  outsideDiameter_mm: 600,
  bore_mm: 400,
  thickness_mm: 50,
  hubBase_mm: 480,
  hubAtWeld_mm: 420,
  lengthThroughHub_mm: 150,
  gasketInside_mm: 440,
  gasketOutside_mm: 480,
  boltLength_mm: 200,
  boltArea_mm2: 500,
};
const near = (value: number, expected: number) => expect(value / expected).toBeCloseTo(1, 6);
const BARE_EI = (200_000 * 100 * 50 ** 3) / 12;

describe('the estimate of a ring', () => {
  // Our own regression, BASIS.md; the numbers put in with a calculator of its own, not with this code.
  it('is the formula of the regression', () => {
    const ring = estimatedRing(FLANGE);
    near(ring.R_mm, 224.65287747);
    near(ring.EI_Nmm2, 1.1102357475652e12);
    near(ring.GJ_Nmm2, 3.3019789866e11);
    near(ring.cBolt_mm_per_N, 1.4e-7);
    near(ring.cGasket_mm3_per_N, 1.4e-4);
  });

  it('twists a bar that is wider than high like one that is higher than wide', () => {
    // t = 100, b = 100: a square, 0.140833·a⁴ by the same approximation (Roark's own for squares: 0.1406).
    const square = estimatedRing({ ...FLANGE, thickness_mm: 100, lengthThroughHub_mm: 200, hubAtWeld_mm: 410 });
    // (g0/t) = 0.05: factor 5.14 · 0.05^0.58 · e^(−0.1426) is below its hold of 1.
    near(square.GJ_Nmm2, (200_000 / 2.6) * 0.1408333333 * 1e8);
    // t = 200, b = 100, the same section lying: J = 200·100³·(1/3 − 0.21·½·(1 − 0.5⁴/12)).
    const high = estimatedRing({ ...FLANGE, thickness_mm: 200, lengthThroughHub_mm: 300, hubAtWeld_mm: 401 });
    near(high.GJ_Nmm2, (200_000 / 2.6) * 200 * 100 ** 3 * 0.22888020833);
  });

  it('holds its factors where the tables end', () => {
    const limp = estimatedRing({ ...FLANGE, hubBase_mm: 402, hubAtWeld_mm: 401, lengthThroughHub_mm: 51 });
    near(limp.EI_Nmm2, 0.9 * BARE_EI);
    const stout = estimatedRing({ ...FLANGE, hubBase_mm: 599, hubAtWeld_mm: 580, lengthThroughHub_mm: 900 });
    near(stout.EI_Nmm2, 12 * BARE_EI);
    const { GJ_Nmm2 } = estimatedRing(FLANGE);
    // Without its hold the factor of the stout flange is 5.14 · 0.5^0.224 · 1.8^0.58 · e^(−0.1426) = 5.4.
    near(stout.GJ_Nmm2 / GJ_Nmm2, 3.2 / 1.500373567062);
    near(estimatedRing({ ...FLANGE, gasketInside_mm: 580, gasketOutside_mm: 600 }).R_mm, 0.72 * 250);
    near(estimatedRing({ ...FLANGE, gasketInside_mm: 400, gasketOutside_mm: 402 }).R_mm, 1.02 * 250);
  });

  it('against a blind is a little narrower and softer, by rough factors', () => {
    const pair = estimatedRing(FLANGE);
    const blind = estimatedRing(FLANGE, 'weld-neck-to-blind');
    near(blind.R_mm / pair.R_mm, 0.93);
    near(blind.EI_Nmm2 / pair.EI_Nmm2, 0.81);
    near(blind.GJ_Nmm2 / pair.GJ_Nmm2, 0.96);
    near(blind.cBolt_mm_per_N, pair.cBolt_mm_per_N);
  });
});
