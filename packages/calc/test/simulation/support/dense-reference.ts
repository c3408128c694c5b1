import { CholeskyDecomposition, Matrix } from 'ml-matrix';
import type { SimulationJoint } from '../../../src/index.ts';

/**
 * The same unknowns and laws as the solver, written apart from it and solved densely: the whole stiffness
 * matrix, one Cholesky factorisation of a general linear algebra library per active set.
 */
export interface DenseStep {
  readonly bolts: readonly number[];
  readonly loads_N: readonly number[];
}

// One factorisation by the library; the matrix is row-major, symmetric and positive definite.
function solveDense(a: Float64Array, b: Float64Array): Float64Array<ArrayBuffer> {
  const n = b.length;
  const factors = new CholeskyDecomposition(Matrix.from1DArray(n, n, a));
  if (!factors.isPositiveDefinite()) throw new Error('The dense matrix is not positive definite.');
  return Float64Array.from(factors.solve(Matrix.columnVector(b)).to1DArray());
}

const MOST_FACTORISATIONS = 100;

interface Point {
  readonly station: number;
  readonly lever: number;
  readonly area: number;
}

/** Stress and tangent of the virgin curve at a closure, faces in series, found by walking the curve. */
function virgin(joint: SimulationJoint, closure: number): readonly [number, number, number] {
  const c = joint.faceCompliance_mm3_per_N;
  let [x0, s0] = [0, 0];
  const { points } = joint.gasket.curve;
  for (const [i, [x1, s1]] of points.entries()) {
    const slope = (s1 - s0) / (x1 - x0);
    if (closure <= x1 + c * s1 || i === points.length - 1) {
      const tangent = slope / (1 + c * slope);
      return [s0 + tangent * (closure - x0 - c * s0), tangent, slope];
    }
    [x0, s0] = [x1, s1];
  }
  throw new Error('The curve has no points.');
}

function ringMatrix(joint: SimulationJoint, stations: number): Float64Array {
  const n = 3 * stations;
  const k = new Float64Array(n * n);
  const { radius_mm: R, bendingStiffness_Nmm2, torsionStiffness_Nmm2 } = joint.ring;
  const h = (2 * Math.PI) / stations;
  // Shape functions by finite polynomials in the angle t from the left station; unknowns W, W′ (per rad) and φ.
  const rows: [number[], number][] = [];
  for (const gauss of [-1, 1]) {
    const t = (h / 2) * (1 + gauss / Math.sqrt(3));
    const second = [
      -6 / h ** 2 + (12 * t) / h ** 3,
      -4 / h + (6 * t) / h ** 2,
      R * (1 - t / h),
      6 / h ** 2 - (12 * t) / h ** 3,
      -2 / h + (6 * t) / h ** 2,
      (R * t) / h,
    ];
    rows.push([second.map((v) => v / R ** 2), (bendingStiffness_Nmm2 * R * h) / 2]);
  }
  const twist = [1.5 / h / R, 0.25 / R, -1 / h, -1.5 / h / R, 0.25 / R, 1 / h];
  rows.push([twist.map((v) => v / R), torsionStiffness_Nmm2 * R * h]);
  for (let e = 0; e < stations; e++) {
    const at = [0, 1, 2].map((i) => 3 * e + i).concat([0, 1, 2].map((i) => 3 * ((e + 1) % stations) + i));
    for (const [strain, weight] of rows)
      for (let i = 0; i < 6; i++)
        for (let j = 0; j < 6; j++) k[at[i]! * n + at[j]!]! += weight * (strain[i]! * strain[j]!);
  }
  return k;
}

/** Final bolt loads, N, and the number of factorisations. */
export function denseSimulation(
  joint: SimulationJoint,
  stations: number,
  steps: readonly DenseStep[],
): { readonly loads: Float64Array; readonly factorisations: number } {
  const n = 3 * stations;
  const ring = ringMatrix(joint, stations);
  const perBolt = stations / joint.boltCount;
  const R = joint.ring.radius_mm;
  const kb =
    1 /
    (joint.boltLength_mm / ((joint.boltModulus_MPa ?? 200_000) * joint.boltArea_mm2) + joint.boltCompliance_mm_per_N);
  const ri = joint.gasket.contactInside_mm / 2;
  const ro = joint.gasket.contactOutside_mm / 2;
  const points: Point[] = [-1, 1].flatMap((side) => {
    const r = (ri + ro) / 2 + (side * (ro - ri)) / 2 / Math.sqrt(3);
    return Array.from({ length: stations }, (_, station) => ({
      station,
      lever: r - R,
      area: (((ro - ri) / 2) * r * 2 * Math.PI) / stations,
    }));
  });
  const peak = points.map(() => ({ closure: 0, stress: 0, stiffness: 0 }));
  const boltLever = joint.boltCircle_mm / 2 - R;
  const takeUp = new Float64Array(joint.boltCount);
  let u = new Float64Array(n);
  let factorisations = 0;
  const closureOf = (x: Float64Array, station: number, lever: number) => x[3 * station]! + lever * x[3 * station + 2]!;

  // The straight piece (force = a + b·closure) of every point and bolt for given closures.
  const pieces = (x: Float64Array, held: ReadonlyMap<number, number>) => {
    const gasket = points.map((point, p) => {
      const c = closureOf(x, point.station, point.lever);
      const { closure, stress, stiffness } = peak[p]!;
      if (c >= closure) {
        const [s, tangent] = virgin(joint, c);
        return [s - tangent * c, tangent] as const;
      }
      return stress - stiffness * (closure - c) > 0
        ? ([stress - stiffness * closure, stiffness] as const)
        : ([0, 0] as const);
    });
    const bolts = Array.from(takeUp, (s, bolt) => {
      const c = closureOf(x, bolt * perBolt, boltLever);
      const least = held.get(bolt) ?? 0;
      return kb * (s - c) >= least ? ([kb * s, -kb] as const) : ([least, 0] as const);
    });
    return { gasket, bolts };
  };
  // Gradient of the energy.
  const gradient = (x: Float64Array, { gasket, bolts }: ReturnType<typeof pieces>) => {
    const g = new Float64Array(n);
    for (let i = 0; i < n; i++) for (let j = 0; j < n; j++) g[i]! += ring[i * n + j]! * x[j]!;
    points.forEach(({ station, lever, area }, p) => {
      const force = area * (gasket[p]![0] + gasket[p]![1] * closureOf(x, station, lever));
      g[3 * station]! += force;
      g[3 * station + 2]! += force * lever;
    });
    bolts.forEach(([a, b], bolt) => {
      const force = a + b * closureOf(x, bolt * perBolt, boltLever);
      g[3 * bolt * perBolt]! -= force;
      g[3 * bolt * perBolt + 2]! -= force * boltLever;
    });
    return g;
  };
  const work = (x: Float64Array, at: ReturnType<typeof pieces>, direction: Float64Array) =>
    gradient(x, at).reduce((sum, value, i) => sum + value * direction[i]!, 0);
  // Largest force out of balance; moments are brought to forces by the ring's radius.
  const unbalance = (x: Float64Array, at: ReturnType<typeof pieces>) =>
    gradient(x, at).reduce((largest, value, i) => Math.max(largest, Math.abs(value) / (i % 3 === 2 ? R : 1)), 0);

  for (const step of steps) {
    const held = new Map(step.bolts.map((bolt, i) => [bolt, step.loads_N[i]!]));
    let active = pieces(u, held);
    let left = MOST_FACTORISATIONS;
    for (; ; left--) {
      if (left === 0) throw new Error('The dense reference found no equilibrium.');
      const k = Float64Array.from(ring);
      const right = new Float64Array(n);
      const put = (station: number, lever: number, constant: number, tangent: number) => {
        const w = 3 * station;
        const phi = w + 2;
        k[w * n + w]! += tangent;
        k[w * n + phi]! += tangent * lever;
        k[phi * n + w]! += tangent * lever;
        k[phi * n + phi]! += tangent * lever * lever;
        right[w]! -= constant;
        right[phi]! -= constant * lever;
      };
      points.forEach((point, p) => {
        const [a, b] = active.gasket[p]!;
        put(point.station, point.lever, a * point.area, b * point.area);
      });
      active.bolts.forEach(([a, b], bolt) => {
        put(bolt * perBolt, boltLever, -a, -b);
      });
      const target = solveDense(k, right);
      factorisations++;
      // The energy is convex: where it rises again before the end of the step, stop at its lowest point.
      const from = u;
      const along = (share: number) => from.map((value, i) => value + share * (target[i]! - value));
      const direction = target.map((value, i) => value - from[i]!);
      const slopeAt = (x: Float64Array) => work(x, pieces(x, held), direction);
      const start = Math.abs(slopeAt(from));
      let share = 1;
      if (slopeAt(target) > 1e-9 * start) {
        let [low, high] = [0, 1];
        for (let i = 0; i < 50; i++) {
          share = (low + high) / 2;
          if (slopeAt(along(share)) > 0) high = share;
          else low = share;
        }
      }
      u = share === 1 ? target : along(share);
      const next = pieces(u, held);
      const balanced = unbalance(u, next) < 1e-9 * Math.max(...step.loads_N);
      active = next;
      if (balanced) break;
    }
    for (const [bolt, load] of held)
      takeUp[bolt] = Math.max(takeUp[bolt]!, closureOf(u, bolt * perBolt, boltLever) + load / kb);
    points.forEach((point, p) => {
      const c = closureOf(u, point.station, point.lever);
      if (!(c > peak[p]!.closure)) return;
      const [stress, , slope] = virgin(joint, c);
      const { thickness_mm, E0_MPa, K1 } = joint.gasket.curve;
      const secant = stress / (c - joint.faceCompliance_mm3_per_N * stress);
      const stiffness = Math.max((E0_MPa + K1 * stress) / thickness_mm, slope, secant);
      peak[p] = { closure: c, stress, stiffness: stiffness / (1 + joint.faceCompliance_mm3_per_N * stiffness) };
    });
  }
  const loads = Float64Array.from(takeUp, (s, bolt) => Math.max(0, kb * (s - closureOf(u, bolt * perBolt, boltLever))));
  return { loads, factorisations };
}
