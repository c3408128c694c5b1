import type { SpringPoints } from './spring-points.ts';
import { small } from './station-index.ts';

/**
 * Guesses the branches of a step from the step before: closures change as they did then, turned to the
 * present bolt and in proportion to the rise of its load. It saves about a third of the Newton iterations and
 * decides nothing: the first iteration corrects what was guessed wrongly.
 */
export class Foresight {
  readonly #points: SpringPoints;
  readonly #start: Float64Array;
  #centre = 0;
  #rise = 0;

  constructor(points: SpringPoints) {
    this.#points = points;
    this.#start = new Float64Array(3 * points.model.stations);
  }

  /**
   * Begins a step and reports the points that are expected to leave their branch, with their station, lever arm
   * and closure then.
   * @param centre station of the first bolt of the step
   * @param rise_N rise of its load; 0 where it is not known
   * @returns whether there was anything to guess from
   */
  begin(
    closure: Float64Array,
    centre: number,
    rise_N: number,
    expect: (point: number, station: number, lever: number, closure: number) => void,
  ): boolean {
    const start = this.#start;
    const factor = this.#rise > 0 && rise_N > 0 ? rise_N / this.#rise : 0;
    if (factor > 0) {
      const { innerLever, outerLever, boltLever } = this.#points.model;
      const stations = small(this.#points.model.stations);
      const { corners, boltAt } = this.#points;
      let before = small(this.#centre);
      let station = small(centre);
      for (let k = 0; k < stations; k++) {
        const s = 3 * station;
        const b = 3 * before;
        const w = closure[s]! + factor * (closure[b]! - start[b]!);
        const psi = closure[s + 2]! + factor * (closure[b + 2]! - start[b + 2]!);
        const inner = w + innerLever * psi;
        const outer = w + outerLever * psi;
        const i = 4 * station;
        if (inner < corners[i]! || inner > corners[i + 1]!) expect(2 * station, station, innerLever, inner);
        if (outer < corners[i + 2]! || outer > corners[i + 3]!) expect(2 * station + 1, station, outerLever, outer);
        const bolt = boltAt[station]!;
        if (bolt >= 0 && k > 0) {
          const c = w + boltLever * psi;
          if (c < corners[2 * bolt]! || c > corners[2 * bolt + 1]!) expect(bolt, station, boltLever, c);
        }
        if (++station === stations) station = 0;
        if (++before === stations) before = 0;
      }
    }
    start.set(closure);
    this.#centre = centre;
    this.#rise = rise_N;
    return factor > 0;
  }
}
