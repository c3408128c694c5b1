import { condenseArc, invertSymmetric, LR, MAPS, RR, STRIDE } from './condense-arc.ts';
import { LevelMarks } from './level-marks.ts';

/**
 * Cyclic block-tridiagonal solver by nested dissection.
 *
 * The ring of stations is halved again and again; each station is the separator of one arc, and the arc is
 * condensed onto its two end stations (block LDLᵀ in that elimination order, the last block being the
 * border that closes the ring). When the springs at a few stations change, only their arcs and the arcs
 * above them are condensed again.
 */
export class RingTree {
  readonly count: number;
  /** Spring stiffness per station: WW, Wψ, ψψ. Change, then call `touch`. */
  readonly springs: Float64Array;
  /** Right-hand side, three numbers a station. Set, then call `load`. */
  readonly rhs: Float64Array;
  /** Solution of the last `solve`. */
  readonly solution: Float64Array;

  readonly #arcs: Float64Array;
  readonly #maps: Float64Array;
  readonly #left: Uint16Array;
  readonly #right: Uint16Array;
  readonly #endLeft: Uint16Array;
  readonly #endRight: Uint16Array;
  readonly #parent: Uint16Array;
  readonly #level: Uint16Array;
  readonly #top: number;
  readonly #dirty: LevelMarks;
  // Stations whose springs may differ from those that were condensed last.
  readonly #touched: Uint16Array;
  readonly #isTouched: Uint8Array;
  #touchedCount = 0;
  readonly #condensed: Float64Array;
  readonly #loaded: LevelMarks;
  readonly #gathered: Float64Array;
  readonly #ends: Float64Array;
  // Separators from the top down, with those below a separator after it.
  readonly #order: Uint16Array;
  #ordered = 0;
  readonly #rootInverse = new Float64Array(6);

  /**
   * @param count number of stations, at least 4
   * @param element 6 × 6 stiffness of the element between neighbouring stations
   */
  constructor(count: number, element: Float64Array) {
    this.count = count;
    this.springs = new Float64Array(3 * count);
    this.rhs = new Float64Array(3 * count);
    this.solution = new Float64Array(3 * count);
    this.#arcs = new Float64Array(STRIDE * (count + 1));
    this.#maps = new Float64Array(MAPS * count);
    this.#left = new Uint16Array(count).fill(count);
    this.#right = new Uint16Array(count).fill(count);
    this.#endLeft = new Uint16Array(count);
    this.#endRight = new Uint16Array(count);
    this.#parent = new Uint16Array(count);
    this.#level = new Uint16Array(count);
    this.#gathered = new Float64Array(3 * count);
    this.#ends = new Float64Array(6 * (count + 1));
    this.#order = new Uint16Array(count - 1);
    this.#top = this.#split(0, count, 0, 1);
    const depth = Math.max(...this.#level) + 1;
    this.#dirty = new LevelMarks(count, depth);
    this.#touched = new Uint16Array(count);
    this.#isTouched = new Uint8Array(count);
    this.#condensed = new Float64Array(3 * count).fill(NaN);
    this.#loaded = new LevelMarks(count, depth);
    const leaf = STRIDE * count;
    const upper = [0, 1, 2, 7, 8, 14];
    for (let k = 0; k < 6; k++) {
      this.#arcs[leaf + k] = element[upper[k]!]!;
      this.#arcs[leaf + RR + k] = element[upper[k]! + 21]!;
    }
    for (let i = 0; i < 3; i++) for (let j = 0; j < 3; j++) this.#arcs[leaf + LR + 3 * i + j] = element[6 * i + 3 + j]!;
    for (let station = 0; station < count; station++) this.touch(station);
  }

  #split(from: number, to: number, parent: number, level: number): number {
    if (to - from < 2) return this.count;
    const middle = (from + to) >> 1;
    this.#endLeft[middle] = from;
    this.#endRight[middle] = to === this.count ? 0 : to;
    this.#parent[middle] = parent;
    this.#level[middle] = level;
    this.#order[this.#ordered++] = middle;
    this.#left[middle] = this.#split(from, middle, middle, level + 1);
    this.#right[middle] = this.#split(middle, to, middle, level + 1);
    return middle;
  }

  /** Says that the springs of a station may have changed. */
  touch(station: number): void {
    if (this.#isTouched[station] === 1) return;
    this.#isTouched[station] = 1;
    this.#touched[this.#touchedCount++] = station;
  }

  /** Says that a station has a right-hand side. */
  load(station: number): void {
    this.#loaded.markUp(station, this.#parent, this.#level);
  }

  // Springs often come back to what they were before the ring is condensed again: only real changes count.
  #markChanged(): void {
    const { springs } = this;
    const condensed = this.#condensed;
    for (let k = 0; k < this.#touchedCount; k++) {
      const station = this.#touched[k]!;
      this.#isTouched[station] = 0;
      const s = 3 * station;
      const a = springs[s]!;
      const b = springs[s + 1]!;
      const c = springs[s + 2]!;
      if (a === condensed[s]! && b === condensed[s + 1]! && c === condensed[s + 2]!) continue;
      condensed[s] = a;
      condensed[s + 1] = b;
      condensed[s + 2] = c;
      this.#dirty.markUp(station, this.#parent, this.#level);
    }
    this.#touchedCount = 0;
  }

  /** Condenses the arcs whose springs changed again. @returns false when a pivot is not positive definite */
  factorise(): boolean {
    this.#markChanged();
    const dirty = this.#dirty;
    let sound = true;
    for (let level = dirty.depth - 1; level >= 0; level--) {
      const from = level * this.count;
      for (let k = from; k < from + dirty.counts[level]!; k++) {
        const station = dirty.items[k]!;
        dirty.marked[station] = 0;
        if (station === 0) sound = this.#closeRing() && sound;
        else {
          const left = this.#left[station]!;
          const right = this.#right[station]!;
          sound = condenseArc(this.#arcs, this.#maps, this.springs, left, right, station) && sound;
        }
      }
      dirty.counts[level] = 0;
    }
    return sound;
  }

  #closeRing(): boolean {
    const arcs = this.#arcs;
    const o = STRIDE * this.#top;
    const upper = (k: number, i: number, j: number) =>
      arcs[o + k]! + arcs[o + RR + k]! + arcs[o + LR + 3 * i + j]! + arcs[o + LR + 3 * j + i]!;
    return invertSymmetric(
      upper(0, 0, 0) + this.springs[0]!,
      upper(1, 0, 1),
      upper(2, 0, 2) + this.springs[1]!,
      upper(3, 1, 1),
      upper(4, 1, 2),
      upper(5, 2, 2) + this.springs[2]!,
      this.#rootInverse,
      0,
    );
  }

  /** Solves for the loaded right-hand sides and clears them. */
  solve(): void {
    this.#gather();
    const { rhs, solution } = this;
    const maps = this.#maps;
    const gathered = this.#gathered;
    const loaded = this.#loaded.marked;
    const inverse = this.#rootInverse;
    const endLeft = this.#endLeft;
    const endRight = this.#endRight;
    const order = this.#order;
    const a = gathered[0]!;
    const b = gathered[1]!;
    const c = gathered[2]!;
    solution[0] = inverse[0]! * a + inverse[1]! * b + inverse[2]! * c;
    solution[1] = inverse[1]! * a + inverse[3]! * b + inverse[4]! * c;
    solution[2] = inverse[2]! * a + inverse[4]! * b + inverse[5]! * c;
    rhs[0] = 0;
    rhs[1] = 0;
    rhs[2] = 0;
    for (let k = 0; k < order.length; k++) {
      const station = order[k]!;
      const l = 3 * endLeft[station]!;
      const r = 3 * endRight[station]!;
      const u0 = solution[l]!;
      const u1 = solution[l + 1]!;
      const u2 = solution[l + 2]!;
      const v0 = solution[r]!;
      const v1 = solution[r + 1]!;
      const v2 = solution[r + 2]!;
      const q = MAPS * station;
      const s = 3 * station;
      let x = 0;
      let y = 0;
      let z = 0;
      if (loaded[station] === 1) {
        const g0 = gathered[s]!;
        const g1 = gathered[s + 1]!;
        const g2 = gathered[s + 2]!;
        x = maps[q + 0]! * g0 + maps[q + 1]! * g1 + maps[q + 2]! * g2;
        y = maps[q + 1]! * g0 + maps[q + 3]! * g1 + maps[q + 4]! * g2;
        z = maps[q + 2]! * g0 + maps[q + 4]! * g1 + maps[q + 5]! * g2;
        rhs[s] = 0;
        rhs[s + 1] = 0;
        rhs[s + 2] = 0;
      }
      const m = q + 6;
      x -= maps[m]! * u0 + maps[m + 1]! * u1 + maps[m + 2]! * u2;
      y -= maps[m + 3]! * u0 + maps[m + 4]! * u1 + maps[m + 5]! * u2;
      z -= maps[m + 6]! * u0 + maps[m + 7]! * u1 + maps[m + 8]! * u2;
      x -= maps[m + 9]! * v0 + maps[m + 10]! * v1 + maps[m + 11]! * v2;
      y -= maps[m + 12]! * v0 + maps[m + 13]! * v1 + maps[m + 14]! * v2;
      z -= maps[m + 15]! * v0 + maps[m + 16]! * v1 + maps[m + 17]! * v2;
      solution[s] = x;
      solution[s + 1] = y;
      solution[s + 2] = z;
    }
    this.#loaded.clear();
  }

  // Carries the right-hand sides from the stations up to the separators above them.
  #gather(): void {
    const marks = this.#loaded;
    const { rhs, count } = this;
    const maps = this.#maps;
    const ends = this.#ends;
    const gathered = this.#gathered;
    for (let level = marks.depth - 1; level >= 0; level--) {
      const from = level * count;
      for (let k = from; k < from + marks.counts[level]!; k++) {
        const station = marks.items[k]!;
        const s = 3 * station;
        if (station === 0) {
          const e = 6 * this.#top;
          const has = marks.marked[this.#top] === 1;
          for (let i = 0; i < 3; i++) gathered[i] = rhs[i]! + (has ? ends[e + i]! + ends[e + 3 + i]! : 0);
          continue;
        }
        const left = this.#left[station]!;
        const right = this.#right[station]!;
        let a = rhs[s]!;
        let b = rhs[s + 1]!;
        let c = rhs[s + 2]!;
        let l0 = 0;
        let l1 = 0;
        let l2 = 0;
        let r0 = 0;
        let r1 = 0;
        let r2 = 0;
        if (left < count && marks.marked[left] === 1) {
          const e = 6 * left;
          l0 = ends[e]!;
          l1 = ends[e + 1]!;
          l2 = ends[e + 2]!;
          a += ends[e + 3]!;
          b += ends[e + 4]!;
          c += ends[e + 5]!;
        }
        if (right < count && marks.marked[right] === 1) {
          const e = 6 * right;
          a += ends[e]!;
          b += ends[e + 1]!;
          c += ends[e + 2]!;
          r0 = ends[e + 3]!;
          r1 = ends[e + 4]!;
          r2 = ends[e + 5]!;
        }
        gathered[s] = a;
        gathered[s + 1] = b;
        gathered[s + 2] = c;
        const m = MAPS * station + 6;
        const e = 6 * station;
        ends[e] = l0 - (maps[m]! * a + maps[m + 3]! * b + maps[m + 6]! * c);
        ends[e + 1] = l1 - (maps[m + 1]! * a + maps[m + 4]! * b + maps[m + 7]! * c);
        ends[e + 2] = l2 - (maps[m + 2]! * a + maps[m + 5]! * b + maps[m + 8]! * c);
        ends[e + 3] = r0 - (maps[m + 9]! * a + maps[m + 12]! * b + maps[m + 15]! * c);
        ends[e + 4] = r1 - (maps[m + 10]! * a + maps[m + 13]! * b + maps[m + 16]! * c);
        ends[e + 5] = r2 - (maps[m + 11]! * a + maps[m + 14]! * b + maps[m + 17]! * c);
      }
    }
    if (marks.marked[0] !== 1) gathered.fill(0, 0, 3);
  }
}
