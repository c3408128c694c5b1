import { recoveryStiffness, segmentOf } from './gasket-law.ts';
import type { JointModel } from './joint-model.ts';

// In the place of a recovery stiffness, which is not needed before the point falls back.
const UNKNOWN = -1;

/** Numbers that describe a branch: line0, line1 and the closures less offset between which it runs. */
export const BRANCH = 4;

/**
 * Everything that pushes the faces apart or pulls them together, as points with a piecewise-linear force:
 * the inner and outer gasket point of each station in turn, the bolts, and the stop of each station.
 *
 * Each point sits on one branch: force = line0 + line1 · c between two corners, with c the closure there less
 * its offset (gap before contact and creep set). Forces grow with c on every branch, so the energy is
 * convex. The branch taken at a corner is a guess of where the point goes next; both are right there.
 */
export class SpringPoints {
  readonly model: JointModel;
  /** First index of the bolts and of the stops. */
  readonly firstBolt: number;
  readonly firstStop: number;
  /** Point of the bolt at each station, −1 between bolts. A division per station would cost more than its springs. */
  readonly boltAt: Int32Array;
  readonly line0: Float64Array;
  readonly line1: Float64Array;
  /** Closures, offset included, at which each point leaves its branch: two numbers a point, beside each other. */
  readonly corners: Float64Array;
  readonly offset: Float64Array;
  /** Position of every nut: take-up beyond hand-tight contact, mm. */
  readonly takeUp: Float64Array;
  /** Load that a tool holds on a nut during a step, N. */
  readonly held: Float64Array;
  /** Largest gasket stress reached anywhere, MPa. */
  highestStress = 0;
  /** Largest closure of each gasket point so far. */
  readonly peak: Float64Array;
  readonly #peakStress: Float64Array;
  // Branch of recovery of each point: an unloading point comes to it again and again.
  readonly #recovery: Float64Array;
  readonly #placed = new Float64Array(BRANCH);
  readonly #segment: Int32Array;

  constructor(model: JointModel) {
    const { stations, gaps } = model;
    const bolts = model.joint.boltCount;
    this.model = model;
    this.firstBolt = 2 * stations;
    this.firstStop = this.firstBolt + bolts;
    this.boltAt = new Int32Array(stations).fill(-1);
    for (let bolt = 0; bolt < bolts; bolt++) this.boltAt[bolt * model.stationsPerBolt] = this.firstBolt + bolt;
    const size = this.firstStop + (model.stopStiffness > 0 ? stations : 0);
    this.line0 = new Float64Array(size);
    this.line1 = new Float64Array(size);
    this.corners = new Float64Array(2 * size);
    this.offset = new Float64Array(size);
    this.takeUp = new Float64Array(bolts).fill(model.joint.nutsClear === true ? -Infinity : 0);
    this.held = new Float64Array(bolts);
    this.peak = new Float64Array(2 * stations);
    this.#peakStress = new Float64Array(2 * stations);
    this.#recovery = new Float64Array(BRANCH * 2 * stations);
    this.#segment = new Int32Array(2 * stations);
    for (let station = 0; station < stations; station++) {
      this.offset[2 * station] = gaps[4 * station]!;
      this.offset[2 * station + 1] = gaps[4 * station + 1]!;
      if (model.stopStiffness > 0) this.offset[this.firstStop + station] = gaps[4 * station + 2]! + model.stopClosure;
    }
    for (let point = 0; point < size; point++) this.place(point, -this.offset[point]!);
  }

  copyFrom(other: SpringPoints): void {
    for (const field of ['line0', 'line1', 'corners', 'offset', 'takeUp', 'peak'] as const)
      this[field].set(other[field]);
    this.held.fill(0);
    this.highestStress = other.highestStress;
    this.#peakStress.set(other.#peakStress);
    this.#recovery.set(other.#recovery);
    this.#segment.set(other.#segment);
  }

  /** Area of a gasket point, mm². */
  areaOf(point: number): number {
    return (point & 1) === 0 ? this.model.innerArea : this.model.outerArea;
  }

  /** Station of a point. */
  stationOf(point: number): number {
    const { firstBolt, firstStop } = this;
    if (point < firstBolt) return point >> 1;
    return point < firstStop ? (point - firstBolt) * this.model.stationsPerBolt : point - firstStop;
  }

  /** Lever arm (r − R)/R of a point. */
  leverOf(point: number): number {
    const model = this.model;
    if (point < this.firstBolt) return (point & 1) === 0 ? model.innerLever : model.outerLever;
    return point < this.firstStop ? model.boltLever : model.stopLever;
  }

  /**
   * Finds the branch of a point at c; at a corner, the one further on.
   * @param into where its numbers are written
   * @param at from which index on
   */
  pick(point: number, c: number, into: Float64Array, at: number): void {
    if (point >= this.firstBolt) {
      if (point >= this.firstStop) this.#pickStop(c, into, at);
      else this.#pickBolt(point - this.firstBolt, c, into, at);
      return;
    }
    const law = this.model.law;
    if (law.bonded) {
      write(into, at, 0, this.areaOf(point) * law.slope[0]!, -Infinity, Infinity);
      return;
    }
    const peak = this.peak[point]!;
    if (c >= peak) {
      const area = this.areaOf(point);
      const k = segmentOf(law, c, this.#segment[point]!);
      const slope = law.slope[k]!;
      const from = Math.max(peak, law.closure[k]!);
      const to = k === law.slope.length - 1 ? Infinity : law.closure[k + 1]!;
      write(into, at, area * (law.stress[k]! - slope * law.closure[k]!), area * slope, from, to);
      return;
    }
    const recovery = this.#recovery;
    const r = BRANCH * point;
    if (recovery[r + 1]! < 0) this.#findRecovery(point);
    const release = recovery[r + 2]!;
    if (c >= release) write(into, at, recovery[r]!, recovery[r + 1]!, release, peak);
    else write(into, at, 0, 0, -Infinity, release);
  }

  #findRecovery(point: number): void {
    const area = this.areaOf(point);
    const peak = this.peak[point]!;
    const stress = this.#peakStress[point]!;
    const stiffness = recoveryStiffness(this.model.law, peak, stress, this.#segment[point]!);
    const release = stress > 0 ? peak - stress / stiffness : peak;
    write(this.#recovery, BRANCH * point, area * (stress - stiffness * peak), area * stiffness, release, peak);
  }

  #pickBolt(bolt: number, c: number, into: Float64Array, at: number): void {
    const { boltStiffness } = this.model;
    const held = this.held[bolt]!;
    const corner = this.takeUp[bolt]! - held / boltStiffness;
    if (c <= corner) write(into, at, -boltStiffness * this.takeUp[bolt]!, boltStiffness, -Infinity, corner);
    else write(into, at, -held, 0, corner, Infinity);
  }

  #pickStop(c: number, into: Float64Array, at: number): void {
    if (c > 0) write(into, at, 0, this.model.stopStiffness, 0, Infinity);
    else write(into, at, 0, 0, -Infinity, 0);
  }

  /** Puts a point on a branch that `pick` has written. */
  take(point: number, from: Float64Array, at: number): void {
    const offset = this.offset[point]!;
    this.line0[point] = from[at]!;
    this.line1[point] = from[at + 1]!;
    this.corners[2 * point] = from[at + 2]! + offset;
    this.corners[2 * point + 1] = from[at + 3]! + offset;
  }

  /** Puts a point on its branch at c. */
  place(point: number, c: number): void {
    this.pick(point, c, this.#placed, 0);
    this.take(point, this.#placed, 0);
  }

  /**
   * Records the largest compression so far of a gasket point, from which it recovers from now on. The point stays
   * on the virgin curve, at its corner: most points that were pressed further are pressed further again.
   * @returns whether its tangent has changed
   */
  remember(point: number, c: number, area: number): boolean {
    const law = this.model.law;
    const k = segmentOf(law, c, this.#segment[point]!);
    const stress = law.stress[k]! + law.slope[k]! * (c - law.closure[k]!);
    this.peak[point] = c;
    this.#peakStress[point] = stress;
    this.#segment[point] = k;
    this.#recovery[BRANCH * point + 1] = UNKNOWN;
    if (stress > this.highestStress) this.highestStress = stress;
    const closure = c + this.offset[point]!;
    if (this.line1[point]! === area * law.slope[k]! && closure <= this.corners[2 * point + 1]!) {
      this.corners[2 * point] = closure;
      return false;
    }
    this.place(point, c);
    return true;
  }
}

function write(into: Float64Array, at: number, line0: number, line1: number, lo: number, hi: number): void {
  into[at] = line0;
  into[at + 1] = line1;
  into[at + 2] = lo;
  into[at + 3] = hi;
}
