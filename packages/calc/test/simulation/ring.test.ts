import { describe, expect, it } from 'vitest';
import { ringElementStiffness } from '../../src/simulation/ring-element.ts';
import { RingTree } from '../../src/simulation/ring-tree.ts';

/** Share of the foundation that acts a tenth of the radius further in. */
const SECOND_SHARE = 0.3;

/** A ring on an even elastic foundation at a lever arm, with a unit load at a station and lever. */
function foundedRing(
  section: { radius_mm: number; bendingStiffness_Nmm2: number; torsionStiffness_Nmm2: number },
  foundation: { stiffness_MPa: number; lever: number },
  stations: number,
  secondShare = SECOND_SHARE,
) {
  const tree = new RingTree(stations, ringElementStiffness(section, (2 * Math.PI) / stations));
  const perStation = (foundation.stiffness_MPa * 2 * Math.PI * section.radius_mm) / stations;
  for (let station = 0; station < stations; station++) {
    tree.springs.set([perStation, perStation * foundation.lever, perStation * foundation.lever ** 2], 3 * station);
    // A little stiffness at a second lever arm holds the section against turning about the foundation.
    const second = secondShare * perStation;
    tree.springs[3 * station]! += second;
    tree.springs[3 * station + 1]! += second * (foundation.lever - 0.1);
    tree.springs[3 * station + 2]! += second * (foundation.lever - 0.1) ** 2;
    tree.touch(station);
  }
  return {
    closure(loadAt: number, readAt: number, loadLever: number, readLever = loadLever): number {
      tree.rhs[3 * loadAt] = 1;
      tree.rhs[3 * loadAt + 2] = loadLever;
      tree.load(loadAt);
      if (!tree.factorise()) throw new Error('not positive definite');
      tree.solve();
      return tree.solution[3 * readAt]! + readLever * tree.solution[3 * readAt + 2]!;
    },
  };
}

const SECTION = { radius_mm: 300, bendingStiffness_Nmm2: 2e12, torsionStiffness_Nmm2: 8e11 };
const FOUNDATION = { stiffness_MPa: 5000, lever: -0.12 };

/** The same by Fourier series: for each harmonic two unknowns, W and ψ. */
function fourierClosure(angle: number, lever: number): number {
  const { radius_mm: R, bendingStiffness_Nmm2, torsionStiffness_Nmm2 } = SECTION;
  const b = bendingStiffness_Nmm2 / R ** 3;
  const t = torsionStiffness_Nmm2 / R ** 3;
  const points = [
    { k: FOUNDATION.stiffness_MPa * R, lever: FOUNDATION.lever },
    { k: SECOND_SHARE * FOUNDATION.stiffness_MPa * R, lever: FOUNDATION.lever - 0.1 },
  ];
  let closure = 0;
  for (let n = 0; n <= 4000; n++) {
    // Bending strain −n²W + ψ, twisting strain n(W − ψ); energy per radian, then a unit load at angle 0.
    let ww = b * n ** 4 + t * n ** 2;
    let wp = -b * n ** 2 - t * n ** 2;
    let pp = b + t * n ** 2;
    for (const point of points) {
      ww += point.k;
      wp += point.k * point.lever;
      pp += point.k * point.lever ** 2;
    }
    const load = (n === 0 ? 1 : 2) / (2 * Math.PI);
    const determinant = ww * pp - wp * wp;
    const w = (load * (pp - wp * lever)) / determinant;
    const psi = (load * (ww * lever - wp)) / determinant;
    closure += (w + lever * psi) * Math.cos(n * angle);
  }
  return closure;
}

describe('the ring', () => {
  it('has no strain in a translation and hardly any in a rigid tilt', () => {
    const stations = 96;
    const arc = (2 * Math.PI) / stations;
    const element = ringElementStiffness(SECTION, arc);
    const energy = (u: readonly number[]) =>
      u.reduce((sum, ui, i) => sum + ui * u.reduce((row, uj, j) => row + element[6 * i + j]! * uj, 0), 0);
    const scale = element[0]!;
    expect(Math.abs(energy([1, 0, 0, 1, 0, 0]))).toBeLessThan(1e-9 * scale);
    const end = [Math.cos(arc), -arc * Math.sin(arc), Math.cos(arc)];
    expect(Math.abs(energy([1, 0, 1, ...end]))).toBeLessThan(1e-9 * scale);
  });

  it.each([0, 0.13, 0.5, 1.2, Math.PI])('on a foundation follows its Fourier series at %f rad', (angle) => {
    const stations = 192;
    const readAt = Math.round((angle * stations) / (2 * Math.PI));
    const exact = fourierClosure((readAt * 2 * Math.PI) / stations, 0.25);
    const under = fourierClosure(0, 0.25);
    const found = foundedRing(SECTION, FOUNDATION, stations).closure(0, readAt, 0.25);
    expect(Math.abs(found - exact)).toBeLessThan(1e-3 * under);
  });

  it('converges to its Fourier series with the number of stations', () => {
    const exact = fourierClosure(0, 0.25);
    const errors = [48, 96, 192].map((stations) =>
      Math.abs(foundedRing(SECTION, FOUNDATION, stations).closure(0, 0, 0.25) / exact - 1),
    );
    expect(errors[1]!).toBeLessThan(errors[0]!);
    expect(errors[2]!).toBeLessThan(errors[1]!);
  });

  it('of great radius is the infinite beam on an elastic foundation', () => {
    // Hetényi (from memory): w = P·β/(2k)·e^(−βx)(cos βx + sin βx), β = (k/4EI)^¼.
    const k = 5000;
    const bendingStiffness_Nmm2 = 2e10;
    const beta = (k / (4 * bendingStiffness_Nmm2)) ** 0.25;
    const radius_mm = 40 / beta;
    const section = { radius_mm, bendingStiffness_Nmm2, torsionStiffness_Nmm2: 2e10 };
    const stations = 1024;
    const ring = foundedRing(section, { stiffness_MPa: k, lever: 0 }, stations, 0);
    for (const readAt of [0, 2, 5, 10]) {
      const x = (readAt * 2 * Math.PI * radius_mm) / stations;
      const beam = (beta / (2 * k)) * Math.exp(-beta * x) * (Math.cos(beta * x) + Math.sin(beta * x));
      expect(Math.abs(ring.closure(0, readAt, 0) - beam)).toBeLessThan((0.007 * beta) / (2 * k));
    }
  });

  it('obeys Maxwell and Betti', () => {
    const ring = foundedRing(SECTION, FOUNDATION, 60);
    for (const [i, j] of [
      [0, 7],
      [13, 41],
      [59, 30],
    ] as const) {
      const there = ring.closure(i, j, 0.25, -0.12);
      const back = ring.closure(j, i, -0.12, 0.25);
      expect(Math.abs(there / back - 1)).toBeLessThan(1e-8);
    }
  });
});
