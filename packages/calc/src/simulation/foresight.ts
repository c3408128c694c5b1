import type { SpringPoints } from './spring-points.ts';

/**
 * Guesses the branches of a step from the step before: closures change as they did then, turned to the
 * present bolt and in proportion to the rise of its load. It saves about a third of the Newton iterations and
 * decides nothing: the first iteration corrects what was guessed wrongly.
 */
export class Foresight {
  readonly #points: SpringPoints;
  readonly #start: Float64Array;
  /** Change of W and ψ over the last step, by stations from its bolt. */
  readonly #change: Float64Array;
  #centre = 0;
  #rise = 0;

  constructor(points: SpringPoints) {
    this.#points = points;
    this.#start = new Float64Array(3 * points.model.stations);
    this.#change = new Float64Array(2 * points.model.stations);
  }

  /**
   * Begins a step and reports the points that are expected to leave their branch, with their closure.
   * @param centre station of the first bolt of the step
   * @param rise_N rise of its load; 0 where it is not known
   * @returns whether there was anything to guess from
   */
  begin(closure: Float64Array, centre: number, rise_N: number, expect: (point: number, c: number) => void): boolean {
    const { stations, stationsPerBolt, innerLever, outerLever, boltLever } = this.#points.model;
    const { lo, hi, offset, firstBolt } = this.#points;
    const change = this.#change;
    const factor = this.#rise > 0 && rise_N > 0 ? rise_N / this.#rise : 0;
    this.#start.set(closure);
    this.#centre = centre;
    this.#rise = rise_N;
    if (factor === 0) return false;
    for (let k = 0; k < stations; k++) {
      const station = centre + k < stations ? centre + k : centre + k - stations;
      const w = closure[3 * station]! + factor * change[2 * k]!;
      const psi = closure[3 * station + 2]! + factor * change[2 * k + 1]!;
      let point = station;
      let c = w + innerLever * psi - offset[point]!;
      if (c > hi[point]! || c < lo[point]!) expect(point, c);
      point += stations;
      c = w + outerLever * psi - offset[point]!;
      if (c > hi[point]! || c < lo[point]!) expect(point, c);
      if (k === 0 || station % stationsPerBolt !== 0) continue;
      point = firstBolt + station / stationsPerBolt;
      c = w + boltLever * psi;
      if (c > hi[point]! || c < lo[point]!) expect(point, c);
    }
    return true;
  }

  /** Ends a step: keeps the change of the closures since it began. */
  end(closure: Float64Array): void {
    const { stations } = this.#points.model;
    const start = this.#start;
    for (let k = 0; k < stations; k++) {
      const station = this.#centre + k < stations ? this.#centre + k : this.#centre + k - stations;
      this.#change[2 * k] = closure[3 * station]! - start[3 * station]!;
      this.#change[2 * k + 1] = closure[3 * station + 2]! - start[3 * station + 2]!;
    }
  }
}
