import { Equilibrium } from './equilibrium.ts';
import { Foresight } from './foresight.ts';
import type { JointModel } from './joint-model.ts';
import { addRingForces } from './ring-element.ts';
import { BRANCH, SpringPoints } from './spring-points.ts';
import { small } from './station-index.ts';

/** A joint being tightened: closure of the ring, history of the gasket and position of every nut. */
export class JointState {
  readonly model: JointModel;
  /** Load of every bolt, N. */
  readonly loads: Float64Array;
  readonly #points: SpringPoints;
  readonly #balance: Equilibrium;
  readonly #foresight: Foresight;
  readonly #reference: number;
  readonly #guess: (point: number, station: number, lever: number, closure: number) => void;

  /**
   * @param model joint prepared by `jointModel`
   * @param reference_N load that accuracy is measured by: the target load
   */
  constructor(model: JointModel, reference_N: number) {
    this.model = model;
    this.#points = new SpringPoints(model);
    this.#balance = new Equilibrium(this.#points, reference_N);
    this.#foresight = new Foresight(this.#points);
    this.#reference = reference_N;
    this.loads = new Float64Array(model.joint.boltCount);
    const branch = new Float64Array(BRANCH);
    this.#guess = (point, station, lever, closure) => {
      this.#points.pick(point, closure - this.#points.offset[point]!, branch, 0);
      this.#balance.switch(point, station, lever, branch, 0);
    };
  }

  /** Newton iterations so far. */
  get iterations(): number {
    return this.#balance.iterations;
  }

  /** Load that accuracy is measured by, N. */
  get reference_N(): number {
    return this.#reference;
  }

  /** Position of every nut: take-up beyond hand-tight contact, mm. */
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
    this.#balance.copyFrom(other.#balance);
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
    this.#balance.settle();
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
    this.#balance.settle();
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
      const set = gaps[4 * (point >> 1) + (point & 1)]! + creep_mm3_per_N * stress[point]!;
      if (set <= points.offset[point]!) continue;
      const before = this.#balance.force(point);
      points.offset[point] = set;
      this.#renew(point, before);
    }
    this.#balance.settle();
    this.#remember();
  }

  /** Balances every station again from the closures themselves: what rounding has left over many steps. */
  correct(): void {
    const { stations, element } = this.model;
    const { closure, unbalance } = this.#balance;
    unbalance.fill(0);
    addRingForces(element, closure, unbalance);
    for (let station = 0; station < stations; station++) this.#balance.wait(station);
    for (let point = 0; point < this.#points.line0.length; point++) {
      const force = this.#balance.force(point);
      unbalance[3 * this.#points.stationOf(point)]! += force;
      unbalance[3 * this.#points.stationOf(point) + 2]! += force * this.#points.leverOf(point);
    }
    this.#balance.settle();
    this.#remember();
  }

  /** Stress at the inner and outer point of every station, MPa. */
  gasketStress(): Float64Array {
    const least = this.model.law.bonded ? -Infinity : 0;
    return new Float64Array(2 * this.model.stations).map(
      (_, point) => Math.max(least, this.#balance.force(point)) / this.#points.areaOf(point),
    );
  }

  /** Force of the stop over the whole ring, N. */
  stopForce(): number {
    let force = 0;
    for (let point = this.#points.firstStop; point < this.#points.line0.length; point++)
      force += this.#balance.force(point);
    return force;
  }

  /** Closure of the faces at a lever arm (r − R)/R since before tightening, mm. */
  closureAt(station: number, lever: number): number {
    return this.#balance.closureAt(station, lever);
  }

  #boltClosure(bolt: number): number {
    return this.closureAt(bolt * this.model.stationsPerBolt, this.model.boltLever);
  }

  // Puts a point on its branch after its nut, hold or set has changed.
  #renew(point: number, before: number): void {
    this.#points.place(point, this.#balance.closureOf(point));
    this.#balance.shift(point, this.#balance.force(point) - before);
  }

  #renewBolt(bolt: number): void {
    const point = this.#points.firstBolt + bolt;
    this.#renew(point, this.#balance.force(point));
  }

  // Points that the last step says will leave their branch start on the next one.
  #foresee(bolt: number, rise_N: number): void {
    const centre = bolt * this.model.stationsPerBolt;
    const balance = this.#balance;
    balance.guessed = this.#foresight.begin(balance.closure, centre, rise_N, this.#guess);
  }

  // Records the largest compression of every point, which recovers from now on, and the bolt loads.
  #remember(): void {
    const { innerLever, outerLever, innerArea, outerArea, boltStiffness } = this.model;
    const stations = small(this.model.stations);
    const points = this.#points;
    const { peak, offset } = points;
    const { closure } = this.#balance;
    for (let station = 0; station < stations; station++) {
      const w = closure[3 * station]!;
      const psi = closure[3 * station + 2]!;
      const p = 2 * station;
      const inner = w + innerLever * psi - offset[p]!;
      const outer = w + outerLever * psi - offset[p + 1]!;
      const innerGrew = inner > peak[p]!;
      const outerGrew = outer > peak[p + 1]!;
      if (innerGrew && points.remember(p, inner, innerArea)) this.#balance.touch(station);
      if (outerGrew && points.remember(p + 1, outer, outerArea)) this.#balance.touch(station);
    }
    for (let bolt = 0; bolt < this.loads.length; bolt++)
      this.loads[bolt] = Math.max(0, boltStiffness * (points.takeUp[bolt]! - this.#boltClosure(bolt)));
  }
}
