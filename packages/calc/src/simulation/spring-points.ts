import { recoveryStiffness, segmentOf } from './gasket-law.ts';
import type { JointModel } from './joint-model.ts';

// A recovery stiffness that is not needed before the point falls back.
const UNKNOWN = -1;

/**
 * Everything that pushes the faces apart or pulls them together, as points with a piecewise-linear force:
 * the inner and outer gasket point of each station, the bolts, and the stop of each station.
 *
 * Each point sits on one branch: force = line0 + line1 · c for lo ≤ c ≤ hi, with c the closure there less
 * its offset (gap before contact and creep set). Forces grow with c on every branch, so the energy is
 * convex. The branch taken at a corner is a guess of where the point goes next; both are right there.
 */
export class SpringPoints {
  readonly model: JointModel;
  /** First index of the bolts and of the stops. */
  readonly firstBolt: number;
  readonly firstStop: number;
  readonly line0: Float64Array;
  readonly line1: Float64Array;
  readonly lo: Float64Array;
  readonly hi: Float64Array;
  readonly offset: Float64Array;
  /** Position of every nut: take-up beyond hand-tight contact, mm. */
  readonly takeUp: Float64Array;
  /** Load that a tool holds on a nut during a step, N. */
  readonly held: Float64Array;
  /** Largest gasket stress reached anywhere, MPa. */
  highestStress = 0;
  /** Branch found by the last `pick`: line0, line1, lo, hi. */
  readonly picked = new Float64Array(4);

  /** Largest closure of each gasket point so far. */
  readonly peak: Float64Array;
  readonly #peakStress: Float64Array;
  readonly #recovery: Float64Array;
  readonly #segment: Int32Array;

  constructor(model: JointModel) {
    const { stations, gaps } = model;
    const bolts = model.joint.boltCount;
    this.model = model;
    this.firstBolt = 2 * stations;
    this.firstStop = this.firstBolt + bolts;
    const size = this.firstStop + (model.stopStiffness > 0 ? stations : 0);
    this.line0 = new Float64Array(size);
    this.line1 = new Float64Array(size);
    this.lo = new Float64Array(size);
    this.hi = new Float64Array(size);
    this.offset = new Float64Array(size);
    this.takeUp = new Float64Array(bolts).fill(model.joint.nutsClear === true ? -Infinity : 0);
    this.held = new Float64Array(bolts);
    this.peak = new Float64Array(2 * stations);
    this.#peakStress = new Float64Array(2 * stations);
    this.#recovery = new Float64Array(2 * stations);
    this.#segment = new Int32Array(2 * stations);
    for (let station = 0; station < stations; station++) {
      this.offset[station] = gaps[4 * station]!;
      this.offset[stations + station] = gaps[4 * station + 1]!;
      if (model.stopStiffness > 0) this.offset[this.firstStop + station] = gaps[4 * station + 2]! + model.stopClosure;
    }
    for (let point = 0; point < size; point++) {
      this.pick(point, -this.offset[point]!);
      this.take(point);
    }
  }

  copyFrom(other: SpringPoints): void {
    for (const field of ['line0', 'line1', 'lo', 'hi', 'offset', 'takeUp'] as const) this[field].set(other[field]);
    this.held.fill(0);
    this.highestStress = other.highestStress;
    this.peak.set(other.peak);
    this.#peakStress.set(other.#peakStress);
    this.#recovery.set(other.#recovery);
    this.#segment.set(other.#segment);
  }

  /** Area of a gasket point, mm². */
  areaOf(point: number): number {
    return point < this.model.stations ? this.model.innerArea : this.model.outerArea;
  }

  /** Station of a point. */
  stationOf(point: number): number {
    const { stations, stationsPerBolt } = this.model;
    const { firstBolt, firstStop } = this;
    if (point < stations) return point;
    if (point < firstBolt) return point - stations;
    return point < firstStop ? (point - firstBolt) * stationsPerBolt : point - firstStop;
  }

  /** Lever arm (r − R)/R of a point. */
  leverOf(point: number): number {
    const model = this.model;
    if (point < model.stations) return model.innerLever;
    if (point < this.firstBolt) return model.outerLever;
    return point < this.firstStop ? model.boltLever : model.stopLever;
  }

  /** Finds the branch of a point at c; at a corner, the one further on. */
  pick(point: number, c: number): void {
    const picked = this.picked;
    if (point >= this.firstBolt) {
      if (point >= this.firstStop) this.#pickStop(c);
      else this.#pickBolt(point - this.firstBolt, c);
      return;
    }
    const law = this.model.law;
    const area = this.areaOf(point);
    if (law.bonded) {
      this.#set(0, area * law.slope[0]!, -Infinity, Infinity);
      return;
    }
    const peak = this.peak[point]!;
    if (c >= peak) {
      const k = segmentOf(law, c, this.#segment[point]!);
      const slope = law.slope[k]!;
      picked[0] = area * (law.stress[k]! - slope * law.closure[k]!);
      picked[1] = area * slope;
      picked[2] = Math.max(peak, law.closure[k]!);
      picked[3] = k === law.slope.length - 1 ? Infinity : law.closure[k + 1]!;
      return;
    }
    const stress = this.#peakStress[point]!;
    let recovery = this.#recovery[point]!;
    if (recovery < 0) {
      recovery = recoveryStiffness(law, peak, stress, this.#segment[point]!);
      this.#recovery[point] = recovery;
    }
    const release = stress > 0 ? peak - stress / recovery : peak;
    if (c >= release && stress > 0) this.#set(area * (stress - recovery * peak), area * recovery, release, peak);
    else this.#set(0, 0, -Infinity, release);
  }

  #pickBolt(bolt: number, c: number): void {
    const { boltStiffness } = this.model;
    const held = this.held[bolt]!;
    const corner = this.takeUp[bolt]! - held / boltStiffness;
    if (c <= corner) this.#set(-boltStiffness * this.takeUp[bolt]!, boltStiffness, -Infinity, corner);
    else this.#set(-held, 0, corner, Infinity);
  }

  #pickStop(c: number): void {
    if (c > 0) this.#set(0, this.model.stopStiffness, 0, Infinity);
    else this.#set(0, 0, -Infinity, 0);
  }

  #set(line0: number, line1: number, lo: number, hi: number): void {
    const picked = this.picked;
    picked[0] = line0;
    picked[1] = line1;
    picked[2] = lo;
    picked[3] = hi;
  }

  /** Puts a point on the branch found by `pick`. */
  take(point: number): void {
    const picked = this.picked;
    this.line0[point] = picked[0]!;
    this.line1[point] = picked[1]!;
    this.lo[point] = picked[2]!;
    this.hi[point] = picked[3]!;
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
    this.#recovery[point] = UNKNOWN;
    if (stress > this.highestStress) this.highestStress = stress;
    if (this.line1[point]! === area * law.slope[k]! && c <= this.hi[point]!) {
      this.lo[point] = c;
      return false;
    }
    this.pick(point, c);
    this.take(point);
    return true;
  }
}
