import { refuse } from '../refusal.ts';
import { RingTree } from './ring-tree.ts';
import { BRANCH, type SpringPoints } from './spring-points.ts';
import { small } from './station-index.ts';

/** Share of the reference load that may remain out of balance at a station. */
const BALANCE = 1e-9;
/** Smaller unbalance waits until `correct`. */
const NEGLIGIBLE = 1e-11;
const MOST_ITERATIONS = 300;
const FULL_STEPS = 6;

/**
 * Equilibrium of the ring with its points.
 *
 * The energy is convex and piecewise quadratic; a semismooth Newton method minimises it: the unbalance after a
 * step is that of the points which left their branch. Full steps are taken first; when a step overshoots, the
 * minimum of the energy along it is found by bisection.
 */
export class Equilibrium {
  readonly points: SpringPoints;
  /** Closure W, h·W′ and ψ of each station. */
  readonly closure: Float64Array;
  /** Forces out of balance, three a station. */
  readonly unbalance: Float64Array;
  /** Newton iterations so far. */
  iterations = 0;
  /** Set when branches were guessed: the first step is then taken whole, wherever it leads. */
  guessed = false;

  readonly #tree: RingTree;
  readonly #reference: number;
  readonly #waiting: Uint16Array;
  readonly #isWaiting: Uint8Array;
  #waitingCount = 0;
  readonly #touched: Uint16Array;
  readonly #isTouched: Uint8Array;
  #touchedCount = 0;
  // Points that leave their branch in the step on trial, with the branch that they come to.
  readonly #movers: Int32Array;
  readonly #moverBranches: Float64Array;
  #moverCount = 0;
  #share = 0;
  #support = 0;

  /** @param reference_N load that accuracy is measured by */
  constructor(points: SpringPoints, reference_N: number) {
    const { stations, element } = points.model;
    this.points = points;
    this.#reference = reference_N;
    this.#tree = new RingTree(stations, element);
    this.closure = new Float64Array(3 * stations);
    this.unbalance = new Float64Array(3 * stations);
    this.#waiting = new Uint16Array(stations);
    this.#isWaiting = new Uint8Array(stations);
    this.#touched = new Uint16Array(stations);
    this.#isTouched = new Uint8Array(stations);
    this.#movers = new Int32Array(points.line0.length);
    this.#moverBranches = new Float64Array(BRANCH * this.#movers.length);
    for (let station = 0; station < stations; station++) this.touch(station);
  }

  copyFrom(other: Equilibrium): void {
    this.closure.set(other.closure);
    this.unbalance.set(other.unbalance);
    this.#waitingCount = 0;
    this.#isWaiting.fill(0);
    for (let station = 0; station < this.points.model.stations; station++) this.touch(station);
  }

  /** Closure of the faces at a lever arm (r − R)/R since before tightening, mm. */
  closureAt(station: number, lever: number): number {
    return this.closure[3 * station]! + lever * this.closure[3 * station + 2]!;
  }

  /** Closure at a point less its offset, mm. */
  closureOf(point: number): number {
    return this.closureAt(this.points.stationOf(point), this.points.leverOf(point)) - this.points.offset[point]!;
  }

  /** Force of a point on its branch, N. */
  force(point: number): number {
    return this.points.line0[point]! + this.points.line1[point]! * this.closureOf(point);
  }

  /** Takes in that a point's force has changed by its branch, not by its closure. */
  shift(point: number, change: number): void {
    const station = this.points.stationOf(point);
    this.unbalance[3 * station]! += change;
    this.unbalance[3 * station + 2]! += change * this.points.leverOf(point);
    this.touch(station);
    this.wait(station);
  }

  /** Puts a point on a branch that `pick` has written, and takes in how its force changes by that. */
  switch(point: number, station: number, lever: number, branch: Float64Array, at: number): void {
    const points = this.points;
    const s = 3 * station;
    const c = this.closure[s]! + lever * this.closure[s + 2]! - points.offset[point]!;
    const change = branch[at]! - points.line0[point]! + (branch[at + 1]! - points.line1[point]!) * c;
    points.take(point, branch, at);
    this.unbalance[s]! += change;
    this.unbalance[s + 2]! += change * lever;
    this.touch(station);
    this.wait(station);
  }

  /** Says that the tangents of a station's points may have changed. */
  touch(station: number): void {
    if (this.#isTouched[station] === 1) return;
    this.#isTouched[station] = 1;
    this.#touched[this.#touchedCount++] = station;
  }

  // Sums the tangents of a station's points.
  #assemble(touched: number): void {
    const station = small(touched);
    const { innerLever, outerLever, boltLever, stopLever, stopStiffness } = this.points.model;
    const { line1, boltAt, firstStop } = this.points;
    const inner = line1[2 * station]!;
    const outer = line1[2 * station + 1]!;
    let d0 = inner + outer + this.#support;
    let d1 = inner * innerLever + outer * outerLever;
    let d2 = inner * innerLever * innerLever + outer * outerLever * outerLever + this.#support;
    if (boltAt[station]! >= 0) {
      const bolt = line1[boltAt[station]!]!;
      d0 += bolt;
      d1 += bolt * boltLever;
      d2 += bolt * boltLever * boltLever;
    }
    if (stopStiffness > 0) {
      const stop = line1[firstStop + station]!;
      d0 += stop;
      d1 += stop * stopLever;
      d2 += stop * stopLever * stopLever;
    }
    const springs = this.#tree.springs;
    const s = 3 * station;
    springs[s] = d0;
    springs[s + 1] = d1;
    springs[s + 2] = d2;
    this.#tree.touch(station);
  }

  /** Puts a station on the list of those out of balance. */
  wait(station: number): void {
    if (this.#isWaiting[station] === 1) return;
    this.#isWaiting[station] = 1;
    this.#waiting[this.#waitingCount++] = station;
  }

  // Drops negligible unbalance from the waiting list; returns the largest.
  #largestUnbalance(): number {
    const unbalance = this.unbalance;
    const threshold = this.#reference * NEGLIGIBLE;
    let largest = 0;
    let kept = 0;
    for (let k = 0; k < this.#waitingCount; k++) {
      const station = this.#waiting[k]!;
      const s = 3 * station;
      const size = Math.abs(unbalance[s]!) + Math.abs(unbalance[s + 1]!) + Math.abs(unbalance[s + 2]!);
      // A number that is not one counts as unbalance, so that it can never pass for equilibrium.
      if (!(size <= largest)) largest = size;
      if (size <= threshold) this.#isWaiting[station] = 0;
      else this.#waiting[kept++] = station;
    }
    this.#waitingCount = kept;
    return largest;
  }

  /**
   * Finds the equilibrium for the present nuts.
   * @throws CalcRefusal `simulation-not-converged`
   */
  settle(): void {
    for (let iteration = 0; iteration < MOST_ITERATIONS; iteration++) {
      const largest = this.#largestUnbalance();
      if (largest <= this.#reference * BALANCE) {
        if (this.#support > 0) this.#supportBy(0);
        return;
      }
      // Support is for one step only: with the next contact the ring may hold by itself.
      if (this.#support > 0) this.#supportBy(0);
      if (!Number.isFinite(largest)) break;
      this.iterations++;
      if (!this.#factorise()) break;
      this.#step(iteration);
    }
    refuse(
      'joint',
      'simulation-not-converged',
      `No equilibrium was found within ${MOST_ITERATIONS} iterations of a step: too little stiffness holds ` +
        'the ring there. Check the ring, gasket and bolt data.',
      MOST_ITERATIONS,
    );
  }

  // Where too little holds the ring, soft springs to ground guide the step; they carry nothing.
  #factorise(): boolean {
    const { boltStiffness, stations, joint } = this.points.model;
    let support = (1e-8 * boltStiffness * joint.boltCount) / stations;
    for (let attempt = 0; attempt < 8; attempt++) {
      for (let k = 0; k < this.#touchedCount; k++) {
        const station = this.#touched[k]!;
        this.#isTouched[station] = 0;
        this.#assemble(station);
      }
      this.#touchedCount = 0;
      if (this.#tree.factorise()) return true;
      this.#supportBy(support);
      support *= 100;
    }
    return false;
  }

  #supportBy(stiffness: number): void {
    this.#support = stiffness;
    for (let station = 0; station < this.points.model.stations; station++) this.touch(station);
  }

  #step(iteration: number): void {
    const unbalance = this.unbalance;
    const { rhs, solution } = this.#tree;
    for (let k = 0; k < this.#waitingCount; k++) {
      const station = this.#waiting[k]!;
      const s = 3 * station;
      rhs[s] = -unbalance[s]!;
      rhs[s + 1] = -unbalance[s + 1]!;
      rhs[s + 2] = -unbalance[s + 2]!;
      this.#tree.load(station);
    }
    this.#tree.solve();
    // Work of the unbalance along the step, at its start and end: does the step overshoot?
    let start = 0;
    for (let k = 0; k < this.#waitingCount; k++) {
      const s = 3 * this.#waiting[k]!;
      start -=
        unbalance[s]! * solution[s]! + unbalance[s + 1]! * solution[s + 1]! + unbalance[s + 2]! * solution[s + 2]!;
    }
    this.#share = 0;
    let end = this.#moveTo(1);
    const guessed = this.guessed;
    this.guessed = false;
    if (guessed && !Number.isNaN(end)) {
      this.#accept();
      return;
    }
    if (!(end <= 0.5 * start) || (iteration >= FULL_STEPS && end > 1e-3 * start)) {
      let low = 0;
      let high = 1;
      for (let bisection = 0; bisection < 60 && !(Math.abs(end) <= 1e-3 * start); bisection++) {
        const share = (low + high) / 2;
        end = this.#moveTo(share) - (1 - share) * start;
        if (end > 0) high = share;
        else low = share;
      }
    }
    this.#accept();
  }

  // Moves the closures to a share of the step; returns the work of what the movers leave unbalanced.
  #moveTo(share: number): number {
    const { innerLever, outerLever, boltLever, stopLever, stopStiffness } = this.points.model;
    const stations = small(this.points.model.stations);
    const { corners, boltAt, firstStop } = this.points;
    const { solution } = this.#tree;
    const closure = this.closure;
    const change = share - this.#share;
    this.#share = share;
    this.#moverCount = 0;
    let work = 0;
    for (let station = 0; station < stations; station++) {
      const s = 3 * station;
      const w = closure[s]! + change * solution[s]!;
      const psi = closure[s + 2]! + change * solution[s + 2]!;
      closure[s] = w;
      closure[s + 1]! += change * solution[s + 1]!;
      closure[s + 2] = psi;
      const inner = w + innerLever * psi;
      const outer = w + outerLever * psi;
      const i = 4 * station;
      // Asked so that what is not a number counts as having left.
      if (!(inner >= corners[i]! && inner <= corners[i + 1]!))
        work += this.#addMover(2 * station, inner, s, innerLever);
      if (!(outer >= corners[i + 2]! && outer <= corners[i + 3]!))
        work += this.#addMover(2 * station + 1, outer, s, outerLever);
      const bolt = boltAt[station]!;
      if (bolt >= 0) {
        const c = w + boltLever * psi;
        if (!(c >= corners[2 * bolt]! && c <= corners[2 * bolt + 1]!)) work += this.#addMover(bolt, c, s, boltLever);
      }
      if (stopStiffness > 0) {
        const stop = firstStop + station;
        const c = w + stopLever * psi;
        if (!(c >= corners[2 * stop]! && c <= corners[2 * stop + 1]!)) work += this.#addMover(stop, c, s, stopLever);
      }
      if (this.#support > 0)
        work -= share * this.#support * (solution[s]! * solution[s]! + solution[s + 2]! * solution[s + 2]!);
    }
    return work;
  }

  #addMover(point: number, closure: number, s: number, lever: number): number {
    const points = this.points;
    const branches = this.#moverBranches;
    const at = BRANCH * this.#moverCount;
    const c = closure - points.offset[point]!;
    points.pick(point, c, branches, at);
    this.#movers[this.#moverCount++] = point;
    const left = branches[at]! - points.line0[point]! + (branches[at + 1]! - points.line1[point]!) * c;
    return left * (this.#tree.solution[s]! + lever * this.#tree.solution[s + 2]!);
  }

  #accept(): void {
    const points = this.points;
    const unbalance = this.unbalance;
    const left = 1 - this.#share;
    for (let k = 0; k < this.#waitingCount; k++) {
      const s = 3 * this.#waiting[k]!;
      unbalance[s]! *= left;
      unbalance[s + 1]! *= left;
      unbalance[s + 2]! *= left;
    }
    for (let k = 0; k < this.#moverCount; k++) {
      const point = this.#movers[k]!;
      this.switch(point, points.stationOf(point), points.leverOf(point), this.#moverBranches, BRANCH * k);
    }
    if (this.#support === 0) return;
    const { solution } = this.#tree;
    for (let station = 0; station < points.model.stations; station++) {
      const s = 3 * station;
      unbalance[s]! -= this.#share * this.#support * solution[s]!;
      unbalance[s + 2]! -= this.#share * this.#support * solution[s + 2]!;
      this.wait(station);
    }
  }
}
