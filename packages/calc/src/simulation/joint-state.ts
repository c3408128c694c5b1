import { refuse } from '../refusal.ts';
import { Foresight } from './foresight.ts';
import type { JointModel } from './joint-model.ts';
import { addRingForces } from './ring-element.ts';
import { RingTree } from './ring-tree.ts';
import { SpringPoints } from './spring-points.ts';

/** Share of the reference load that may remain out of balance at a station. */
const BALANCE = 1e-9;
/** Smaller unbalance waits until `correct`. */
const NEGLIGIBLE = 1e-11;
const MOST_ITERATIONS = 300;
const FULL_STEPS = 6;

/**
 * A joint being tightened: closure of the ring, history of the gasket and position of every nut.
 *
 * Each step minimises a convex, piecewise quadratic energy by a semismooth Newton method: the unbalance
 * after a step is that of the points which left their branch. Full steps are taken first; when a step
 * overshoots, the minimum of the energy along it is found by bisection.
 */
export class JointState {
  readonly model: JointModel;
  /** Load of every bolt, N. */
  readonly loads: Float64Array;
  /** Newton iterations so far. */
  iterations = 0;

  readonly #points: SpringPoints;
  readonly #tree: RingTree;
  readonly #reference: number;
  readonly #reach: number;
  /** Closure W, h·W′ and ψ of each station. */
  readonly #closure: Float64Array;
  readonly #unbalance: Float64Array;
  readonly #waiting: Int32Array;
  readonly #isWaiting: Uint8Array;
  #waitingCount = 0;
  // Points that leave their branch in the step on trial, with the branch that they come to.
  readonly #movers: Int32Array;
  readonly #moverBranches: Float64Array;
  #moverCount = 0;
  #share = 0;
  readonly #foresight: Foresight;
  #guessed = false;
  #support = 0;

  /**
   * @param model joint prepared by `jointModel`
   * @param reference_N load that accuracy is measured by: the target load
   * @param reach share of the bolt stretch at the reference load below which an arc is not followed
   */
  constructor(model: JointModel, reference_N: number, reach = 1e-9) {
    const { stations, joint } = model;
    this.model = model;
    this.#points = new SpringPoints(model);
    this.#reference = reference_N;
    this.#reach = (reach * reference_N) / model.boltStiffness;
    this.loads = new Float64Array(joint.boltCount);
    this.#tree = new RingTree(stations, model.element);
    this.#closure = new Float64Array(3 * stations);
    this.#unbalance = new Float64Array(3 * stations);
    this.#waiting = new Int32Array(stations);
    this.#isWaiting = new Uint8Array(stations);
    this.#movers = new Int32Array(this.#points.line0.length);
    this.#moverBranches = new Float64Array(4 * this.#movers.length);
    this.#foresight = new Foresight(this.#points);
    for (let station = 0; station < stations; station++) this.#assemble(station);
  }

  /** Load that accuracy is measured by, N. */
  get reference_N(): number {
    return this.#reference;
  }

  get takeUp(): Float64Array {
    return this.#points.takeUp;
  }

  /** Largest gasket stress reached anywhere so far, MPa. */
  get highestStress(): number {
    return this.#points.highestStress;
  }

  /** Takes over the closures, history and nuts of another state of the same joint and gasket. */
  copyFrom(other: JointState): void {
    this.loads.set(other.loads);
    this.#points.copyFrom(other.#points);
    this.#closure.set(other.#closure);
    this.#unbalance.set(other.#unbalance);
    this.#waitingCount = 0;
    this.#isWaiting.fill(0);
    for (let station = 0; station < this.model.stations; station++) this.#assemble(station);
  }

  /** A copy that can be tightened on its own. */
  clone(): JointState {
    const copy = new JointState(this.model, this.#reference);
    copy.copyFrom(this);
    return copy;
  }

  /**
   * Tightens bolts together to given loads. A nut already above its load does not move.
   * @param bolts indexes from 0, clockwise
   * @param loads_N load of each on the tool
   * @throws CalcRefusal when no equilibrium is found
   */
  tighten(bolts: readonly number[], loads_N: readonly number[]): void {
    const points = this.#points;
    for (let k = 0; k < bolts.length; k++) {
      points.held[bolts[k]!] = loads_N[k]!;
      this.#renewBolt(bolts[k]!);
    }
    this.#foresee(bolts[0]!, loads_N[0]! - this.loads[bolts[0]!]!);
    this.#settle(this.#reach);
    for (const bolt of bolts) {
      const reached = this.#boltClosure(bolt) + points.held[bolt]! / this.model.boltStiffness;
      if (reached > points.takeUp[bolt]!) points.takeUp[bolt] = reached;
      points.held[bolt] = 0;
      this.#renewBolt(bolt);
    }
    this.#remember();
  }

  /** Turns nuts forward to given positions together; none is turned back. */
  place(bolts: readonly number[], takeUp_mm: readonly number[]): void {
    const { takeUp } = this.#points;
    for (let k = 0; k < bolts.length; k++) {
      const bolt = bolts[k]!;
      if (takeUp_mm[k]! > takeUp[bolt]!) takeUp[bolt] = takeUp_mm[k]!;
      this.#renewBolt(bolt);
    }
    this.#foresee(bolts[0]!, 0);
    this.#settle(this.#reach);
    this.#remember();
  }

  /**
   * Lets the gasket flow: each point's curve shifts by a set that grows to `creep` times its stress.
   * @param creep_mm3_per_N set in mm per MPa
   */
  relax(creep_mm3_per_N: number): void {
    const points = this.#points;
    const { stations, gaps } = this.model;
    const stress = this.gasketStress();
    for (let point = 0; point < 2 * stations; point++) {
      const station = point % stations;
      const side = point < stations ? 0 : 1;
      const set = gaps[4 * station + side]! + creep_mm3_per_N * stress[2 * station + side]!;
      if (set <= points.offset[point]!) continue;
      const before = this.#force(point);
      points.offset[point] = set;
      this.#renew(point, before);
    }
    this.#settle(0);
    this.#remember();
  }

  /** Balances every station again from the closures themselves, without leaving any arc out. */
  correct(): void {
    const { stations, element } = this.model;
    const closure = this.#closure;
    const unbalance = this.#unbalance;
    unbalance.fill(0);
    addRingForces(element, closure, unbalance);
    for (let station = 0; station < stations; station++) this.#wait(station);
    for (let point = 0; point < this.#points.line0.length; point++) {
      const force = this.#force(point);
      unbalance[3 * this.#points.stationOf(point)]! += force;
      unbalance[3 * this.#points.stationOf(point) + 2]! += force * this.#points.leverOf(point);
    }
    this.#settle(0);
    this.#remember();
  }

  /** Stress at the inner and outer point of every station, MPa. */
  gasketStress(): Float64Array {
    const { stations } = this.model;
    const stress = new Float64Array(2 * stations);
    for (let point = 0; point < 2 * stations; point++)
      stress[2 * (point % stations) + (point < stations ? 0 : 1)] =
        Math.max(this.model.law.bonded ? -Infinity : 0, this.#force(point)) / this.#points.areaOf(point);
    return stress;
  }

  /** Force of the stop over the whole ring, N. */
  stopForce(): number {
    let force = 0;
    for (let point = this.#points.firstStop; point < this.#points.line0.length; point++) force += this.#force(point);
    return force;
  }

  /** Closure of the faces at a lever arm (r − R)/R since before tightening, mm. */
  closureAt(station: number, lever: number): number {
    return this.#closure[3 * station]! + lever * this.#closure[3 * station + 2]!;
  }

  #boltClosure(bolt: number): number {
    return this.closureAt(bolt * this.model.stationsPerBolt, this.model.boltLever);
  }

  #closureOf(point: number): number {
    return this.closureAt(this.#points.stationOf(point), this.#points.leverOf(point)) - this.#points.offset[point]!;
  }

  #force(point: number): number {
    return this.#points.line0[point]! + this.#points.line1[point]! * this.#closureOf(point);
  }

  // Puts a point on its branch after its nut, hold or set has changed.
  #renew(point: number, before: number): void {
    this.#points.pick(point, this.#closureOf(point));
    this.#points.take(point);
    this.#shift(point, this.#force(point) - before);
  }

  #renewBolt(bolt: number): void {
    const point = this.#points.firstBolt + bolt;
    this.#renew(point, this.#force(point));
  }

  // Points that the last step says will leave their branch start on the next one.
  #foresee(bolt: number, rise_N: number): void {
    const centre = bolt * this.model.stationsPerBolt;
    this.#guessed = this.#foresight.begin(this.#closure, centre, rise_N, (point, c) => this.#guess(point, c));
  }

  #guess(point: number, c: number): void {
    const before = this.#force(point);
    this.#points.pick(point, c);
    this.#points.take(point);
    this.#shift(point, this.#force(point) - before);
  }

  // A point's force has changed by its branch, not by its closure.
  #shift(point: number, change: number): void {
    const station = this.#points.stationOf(point);
    this.#unbalance[3 * station]! += change;
    this.#unbalance[3 * station + 2]! += change * this.#points.leverOf(point);
    this.#assemble(station);
    this.#wait(station);
  }

  // Sums the tangents of a station's points.
  #assemble(station: number): void {
    const { stations, stationsPerBolt, innerLever, outerLever, boltLever, stopLever, stopStiffness } = this.model;
    const { line1, firstBolt, firstStop } = this.#points;
    const inner = line1[station]!;
    const outer = line1[stations + station]!;
    let d0 = inner + outer + this.#support;
    let d1 = inner * innerLever + outer * outerLever;
    let d2 = inner * innerLever * innerLever + outer * outerLever * outerLever + this.#support;
    if (station % stationsPerBolt === 0) {
      const bolt = line1[firstBolt + station / stationsPerBolt]!;
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

  #wait(station: number): void {
    if (this.#isWaiting[station] === 1) return;
    this.#isWaiting[station] = 1;
    this.#waiting[this.#waitingCount++] = station;
  }

  // Drops negligible unbalance from the waiting list; returns the largest.
  #largestUnbalance(): number {
    const unbalance = this.#unbalance;
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

  #settle(reach: number): void {
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
      this.#step(iteration, reach);
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
    const { boltStiffness, stations, joint } = this.model;
    let support = (1e-8 * boltStiffness * joint.boltCount) / stations;
    for (let attempt = 0; attempt < 8; attempt++) {
      if (this.#tree.factorise()) return true;
      this.#supportBy(support);
      support *= 100;
    }
    return false;
  }

  #supportBy(stiffness: number): void {
    this.#support = stiffness;
    for (let station = 0; station < this.model.stations; station++) this.#assemble(station);
  }

  #step(iteration: number, reach: number): void {
    const unbalance = this.#unbalance;
    const { rhs, solution } = this.#tree;
    for (let k = 0; k < this.#waitingCount; k++) {
      const station = this.#waiting[k]!;
      for (let s = 3 * station; s < 3 * station + 3; s++) rhs[s] = -unbalance[s]!;
      this.#tree.load(station);
    }
    this.#tree.solve(reach);
    // Work of the unbalance along the step, at its start and end: does the step overshoot?
    let start = 0;
    for (let k = 0; k < this.#waitingCount; k++)
      for (let i = 0, s = 3 * this.#waiting[k]!; i < 3; i++, s++) start -= unbalance[s]! * solution[s]!;
    this.#share = 0;
    let end = this.#moveTo(1);
    const guessed = this.#guessed;
    this.#guessed = false;
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
    const { stations, stationsPerBolt, innerLever, outerLever, boltLever, stopLever, stopStiffness } = this.model;
    const { lo, hi, offset, firstBolt, firstStop } = this.#points;
    const { solution, visited, visitedCount } = this.#tree;
    const closure = this.#closure;
    const change = share - this.#share;
    this.#share = share;
    this.#moverCount = 0;
    let work = 0;
    for (let k = 0; k < visitedCount; k++) {
      const station = visited[k]!;
      const s = 3 * station;
      const w = closure[s]! + change * solution[s]!;
      const psi = closure[s + 2]! + change * solution[s + 2]!;
      closure[s] = w;
      closure[s + 1]! += change * solution[s + 1]!;
      closure[s + 2] = psi;
      let c = w + innerLever * psi - offset[station]!;
      if (!(c >= lo[station]! && c <= hi[station]!)) work += this.#addMover(station, c, s, innerLever);
      let point = stations + station;
      c = w + outerLever * psi - offset[point]!;
      if (!(c >= lo[point]! && c <= hi[point]!)) work += this.#addMover(point, c, s, outerLever);
      if (station % stationsPerBolt === 0) {
        point = firstBolt + station / stationsPerBolt;
        c = w + boltLever * psi;
        if (!(c >= lo[point]! && c <= hi[point]!)) work += this.#addMover(point, c, s, boltLever);
      }
      if (stopStiffness > 0) {
        point = firstStop + station;
        c = w + stopLever * psi - offset[point]!;
        if (!(c >= lo[point]! && c <= hi[point]!)) work += this.#addMover(point, c, s, stopLever);
      }
      if (this.#support > 0)
        work -= share * this.#support * (solution[s]! * solution[s]! + solution[s + 2]! * solution[s + 2]!);
    }
    return work;
  }

  #addMover(point: number, c: number, s: number, lever: number): number {
    const points = this.#points;
    points.pick(point, c);
    for (let i = 0; i < 4; i++) this.#moverBranches[4 * this.#moverCount + i] = points.picked[i]!;
    this.#movers[this.#moverCount++] = point;
    const left = points.picked[0]! - points.line0[point]! + (points.picked[1]! - points.line1[point]!) * c;
    return left * (this.#tree.solution[s]! + lever * this.#tree.solution[s + 2]!);
  }

  #accept(): void {
    const points = this.#points;
    const unbalance = this.#unbalance;
    const left = 1 - this.#share;
    for (let k = 0; k < this.#waitingCount; k++)
      for (let i = 0, s = 3 * this.#waiting[k]!; i < 3; i++, s++) unbalance[s]! *= left;
    for (let k = 0; k < this.#moverCount; k++) {
      const point = this.#movers[k]!;
      const before = this.#force(point);
      for (let i = 0; i < 4; i++) points.picked[i] = this.#moverBranches[4 * k + i]!;
      points.take(point);
      this.#shift(point, this.#force(point) - before);
    }
    if (this.#support === 0) return;
    const { solution, visited, visitedCount } = this.#tree;
    for (let k = 0; k < visitedCount; k++) {
      const s = 3 * visited[k]!;
      unbalance[s]! -= this.#share * this.#support * solution[s]!;
      unbalance[s + 2]! -= this.#share * this.#support * solution[s + 2]!;
      this.#wait(visited[k]!);
    }
  }

  // Records the largest compression of every point, which recovers from now on, and the bolt loads.
  #remember(): void {
    const { stations, innerLever, outerLever, boltStiffness } = this.model;
    const points = this.#points;
    const { peak, offset } = points;
    const closure = this.#closure;
    this.#foresight.end(closure);
    for (let station = 0; station < stations; station++) {
      const w = closure[3 * station]!;
      const psi = closure[3 * station + 2]!;
      const inner = w + innerLever * psi - offset[station]!;
      const outer = w + outerLever * psi - offset[stations + station]!;
      const innerGrew = inner > peak[station]!;
      const outerGrew = outer > peak[stations + station]!;
      if (innerGrew) points.remember(station, inner);
      if (outerGrew) points.remember(stations + station, outer);
      if (innerGrew || outerGrew) this.#assemble(station);
    }
    for (let bolt = 0; bolt < this.loads.length; bolt++)
      this.loads[bolt] = Math.max(0, boltStiffness * (points.takeUp[bolt]! - this.#boltClosure(bolt)));
  }
}
