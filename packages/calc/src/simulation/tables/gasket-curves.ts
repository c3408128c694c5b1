import type { GasketCurve } from '../gasket-law.ts';

/** Where the curves below come from; to be shown beside every result that uses one. */
export const GASKET_CURVES_SOURCE =
  'Engineering estimate of the family, not measured: a site should enter EN 13555 data of its gasket.';

/** Compression curves by gasket family: thickness mm, points mm/MPa, recovery E0 MPa and K1. Estimates. */
export const GASKET_CURVES: Readonly<Record<string, GasketCurve>> = {
  'spiral-wound': {
    thickness_mm: 4.5,
    points: [
      [0.3, 4],
      [0.6, 12],
      [0.9, 30],
      [1.1, 55],
      [1.25, 90],
      [1.35, 140],
      [1.45, 230],
    ],
    E0_MPa: 500,
    K1: 35,
  },
  'fibre-sheet': {
    thickness_mm: 1.6,
    points: [
      [0.03, 2.5],
      [0.08, 11],
      [0.15, 30],
      [0.2, 48],
      [0.25, 70],
      [0.33, 120],
    ],
    E0_MPa: 500,
    K1: 20,
  },
  'graphite-sheet': {
    thickness_mm: 2,
    points: [
      [0.3, 2.5],
      [0.55, 9],
      [0.75, 22],
      [0.9, 42],
      [1, 70],
      [1.08, 120],
      [1.13, 180],
    ],
    E0_MPa: 1,
    K1: 28,
  },
  'eptfe-sheet': {
    thickness_mm: 3,
    points: [
      [0.6, 2],
      [1.1, 6],
      [1.5, 14],
      [1.8, 30],
      [1.95, 50],
      [2.05, 90],
    ],
    E0_MPa: 100,
    K1: 20,
  },
  'grooved-metal': {
    thickness_mm: 4,
    points: [
      [0.15, 3],
      [0.3, 12],
      [0.42, 35],
      [0.5, 75],
      [0.55, 130],
      [0.6, 250],
    ],
    E0_MPa: 1000,
    K1: 60,
  },
};
