/**
 * Cyclic block-tridiagonal solver by nested dissection.
 *
 * The ring of stations is halved again and again; each station is the separator of one arc, and the arc is
 * condensed onto its two end stations (block LDLᵀ in that elimination order, the last block being the
 * border that closes the ring). When the springs at a few stations change, only their arcs and the arcs
 * above them are condensed again, and a solution is followed only into the arcs that it reaches.
 */
const STRIDE = 45;
// Offsets in an arc's record: condensed stiffness LL (6), LR (9), RR (6), then inverse pivot (6) and the
// two maps from the ends to the separator (9 + 9).
const LR = 6;
const RR = 15;
const PIVOT = 21;
const MAP_LEFT = 27; // the map from the right end follows at 36

export class RingTree {
  readonly count: number;
  /** Spring stiffness per station: WW, Wψ, ψψ. Change, then call `touch`. */
  readonly springs: Float64Array;
  /** Right-hand side, three numbers a station. Set, then call `load`. */
  readonly rhs: Float64Array;
  /** Solution of the last `solve`; only stations listed in `visited` are current. */
  readonly solution: Float64Array;
  readonly visited: Int32Array;
  visitedCount = 0;

  readonly #arcs: Float64Array;
  readonly #left: Int32Array;
  readonly #right: Int32Array;
  readonly #endLeft: Int32Array;
  readonly #endRight: Int32Array;
  readonly #parent: Int32Array;
  readonly #level: Int32Array;
  readonly #top: number;
  readonly #dirty: LevelMarks;
  readonly #loaded: LevelMarks;
  readonly #gathered: Float64Array;
  readonly #ends: Float64Array;
  readonly #stack: Int32Array;
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
    this.visited = new Int32Array(count);
    this.#arcs = new Float64Array(STRIDE * (count + 1));
    this.#left = new Int32Array(count).fill(count);
    this.#right = new Int32Array(count).fill(count);
    this.#endLeft = new Int32Array(count);
    this.#endRight = new Int32Array(count);
    this.#parent = new Int32Array(count);
    this.#level = new Int32Array(count);
    this.#gathered = new Float64Array(3 * count);
    this.#ends = new Float64Array(6 * (count + 1));
    this.#stack = new Int32Array(64);
    this.#top = this.#split(0, count, 0, 1);
    const depth = Math.max(...this.#level) + 1;
    this.#dirty = new LevelMarks(count, depth);
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
    this.#left[middle] = this.#split(from, middle, middle, level + 1);
    this.#right[middle] = this.#split(middle, to, middle, level + 1);
    return middle;
  }

  /** Says that the springs of a station have changed. */
  touch(station: number): void {
    this.#dirty.markUp(station, this.#parent, this.#level);
  }

  /** Says that a station has a right-hand side. */
  load(station: number): void {
    this.#loaded.markUp(station, this.#parent, this.#level);
  }

  /** Condenses the touched arcs again. @returns false when a pivot is not positive definite */
  factorise(): boolean {
    const dirty = this.#dirty;
    let sound = true;
    for (let level = dirty.depth - 1; level >= 0; level--) {
      const from = level * this.count;
      for (let k = from; k < from + dirty.counts[level]!; k++) {
        const station = dirty.items[k]!;
        dirty.marked[station] = 0;
        if (station === 0) sound = this.#closeRing() && sound;
        else sound = this.#condense(station) && sound;
      }
      dirty.counts[level] = 0;
    }
    return sound;
  }

  #condense(station: number): boolean {
    const arcs = this.#arcs;
    const springs = this.springs;
    const l = STRIDE * this.#left[station]!;
    const r = STRIDE * this.#right[station]!;
    const o = STRIDE * station;
    const s = 3 * station;
    const sound = invertSymmetric(
      arcs[l + 15]! + arcs[r]! + springs[s]!,
      arcs[l + 16]! + arcs[r + 1]!,
      arcs[l + 17]! + arcs[r + 2]! + springs[s + 1]!,
      arcs[l + 18]! + arcs[r + 3]!,
      arcs[l + 19]! + arcs[r + 4]!,
      arcs[l + 20]! + arcs[r + 5]! + springs[s + 2]!,
      arcs,
      o + PIVOT,
    );
    const i00 = arcs[o + 21]!;
    const i01 = arcs[o + 22]!;
    const i02 = arcs[o + 23]!;
    const i11 = arcs[o + 24]!;
    const i12 = arcs[o + 25]!;
    const i22 = arcs[o + 26]!;
    // Written out: this is the innermost product of the whole simulation, and loops triple its time.
    const l00 = arcs[l + 6]!;
    const l01 = arcs[l + 7]!;
    const l02 = arcs[l + 8]!;
    const l10 = arcs[l + 9]!;
    const l11 = arcs[l + 10]!;
    const l12 = arcs[l + 11]!;
    const l20 = arcs[l + 12]!;
    const l21 = arcs[l + 13]!;
    const l22 = arcs[l + 14]!;
    const r00 = arcs[r + 6]!;
    const r01 = arcs[r + 7]!;
    const r02 = arcs[r + 8]!;
    const r10 = arcs[r + 9]!;
    const r11 = arcs[r + 10]!;
    const r12 = arcs[r + 11]!;
    const r20 = arcs[r + 12]!;
    const r21 = arcs[r + 13]!;
    const r22 = arcs[r + 14]!;
    const a00 = i00 * l00 + i01 * l01 + i02 * l02;
    const a01 = i00 * l10 + i01 * l11 + i02 * l12;
    const a02 = i00 * l20 + i01 * l21 + i02 * l22;
    const a10 = i01 * l00 + i11 * l01 + i12 * l02;
    const a11 = i01 * l10 + i11 * l11 + i12 * l12;
    const a12 = i01 * l20 + i11 * l21 + i12 * l22;
    const a20 = i02 * l00 + i12 * l01 + i22 * l02;
    const a21 = i02 * l10 + i12 * l11 + i22 * l12;
    const a22 = i02 * l20 + i12 * l21 + i22 * l22;
    const b00 = i00 * r00 + i01 * r10 + i02 * r20;
    const b01 = i00 * r01 + i01 * r11 + i02 * r21;
    const b02 = i00 * r02 + i01 * r12 + i02 * r22;
    const b10 = i01 * r00 + i11 * r10 + i12 * r20;
    const b11 = i01 * r01 + i11 * r11 + i12 * r21;
    const b12 = i01 * r02 + i11 * r12 + i12 * r22;
    const b20 = i02 * r00 + i12 * r10 + i22 * r20;
    const b21 = i02 * r01 + i12 * r11 + i22 * r21;
    const b22 = i02 * r02 + i12 * r12 + i22 * r22;
    arcs[o + 27] = a00;
    arcs[o + 28] = a01;
    arcs[o + 29] = a02;
    arcs[o + 30] = a10;
    arcs[o + 31] = a11;
    arcs[o + 32] = a12;
    arcs[o + 33] = a20;
    arcs[o + 34] = a21;
    arcs[o + 35] = a22;
    arcs[o + 36] = b00;
    arcs[o + 37] = b01;
    arcs[o + 38] = b02;
    arcs[o + 39] = b10;
    arcs[o + 40] = b11;
    arcs[o + 41] = b12;
    arcs[o + 42] = b20;
    arcs[o + 43] = b21;
    arcs[o + 44] = b22;
    arcs[o + 0] = arcs[l + 0]! - (l00 * a00 + l01 * a10 + l02 * a20);
    arcs[o + 15] = arcs[r + 15]! - (r00 * b00 + r10 * b10 + r20 * b20);
    arcs[o + 1] = arcs[l + 1]! - (l00 * a01 + l01 * a11 + l02 * a21);
    arcs[o + 16] = arcs[r + 16]! - (r00 * b01 + r10 * b11 + r20 * b21);
    arcs[o + 2] = arcs[l + 2]! - (l00 * a02 + l01 * a12 + l02 * a22);
    arcs[o + 17] = arcs[r + 17]! - (r00 * b02 + r10 * b12 + r20 * b22);
    arcs[o + 3] = arcs[l + 3]! - (l10 * a01 + l11 * a11 + l12 * a21);
    arcs[o + 18] = arcs[r + 18]! - (r01 * b01 + r11 * b11 + r21 * b21);
    arcs[o + 4] = arcs[l + 4]! - (l10 * a02 + l11 * a12 + l12 * a22);
    arcs[o + 19] = arcs[r + 19]! - (r01 * b02 + r11 * b12 + r21 * b22);
    arcs[o + 5] = arcs[l + 5]! - (l20 * a02 + l21 * a12 + l22 * a22);
    arcs[o + 20] = arcs[r + 20]! - (r02 * b02 + r12 * b12 + r22 * b22);
    arcs[o + 6] = -(l00 * b00 + l01 * b10 + l02 * b20);
    arcs[o + 7] = -(l00 * b01 + l01 * b11 + l02 * b21);
    arcs[o + 8] = -(l00 * b02 + l01 * b12 + l02 * b22);
    arcs[o + 9] = -(l10 * b00 + l11 * b10 + l12 * b20);
    arcs[o + 10] = -(l10 * b01 + l11 * b11 + l12 * b21);
    arcs[o + 11] = -(l10 * b02 + l11 * b12 + l12 * b22);
    arcs[o + 12] = -(l20 * b00 + l21 * b10 + l22 * b20);
    arcs[o + 13] = -(l20 * b01 + l21 * b11 + l22 * b21);
    arcs[o + 14] = -(l20 * b02 + l21 * b12 + l22 * b22);
    return sound;
  }

  #closeRing(): boolean {
    const arcs = this.#arcs;
    const o = STRIDE * this.#top;
    const at = (k: number) => arcs[o + k]! + arcs[o + RR + k]!;
    const cross = (i: number, j: number) => arcs[o + LR + 3 * i + j]! + arcs[o + LR + 3 * j + i]!;
    return invertSymmetric(
      at(0) + cross(0, 0) + this.springs[0]!,
      at(1) + cross(0, 1),
      at(2) + cross(0, 2) + this.springs[1]!,
      at(3) + cross(1, 1),
      at(4) + cross(1, 2),
      at(5) + cross(2, 2) + this.springs[2]!,
      this.#rootInverse,
      0,
    );
  }

  /**
   * Solves for the loaded right-hand sides and clears them.
   * @param reach arcs whose two ends move less than this (mm) and carry no load are not entered
   */
  solve(reach: number): void {
    this.#gather();
    const { rhs, solution, visited } = this;
    const arcs = this.#arcs;
    const gathered = this.#gathered;
    const loaded = this.#loaded.marked;
    const inverse = this.#rootInverse;
    const a = gathered[0]!;
    const b = gathered[1]!;
    const c = gathered[2]!;
    solution[0] = inverse[0]! * a + inverse[1]! * b + inverse[2]! * c;
    solution[1] = inverse[1]! * a + inverse[3]! * b + inverse[4]! * c;
    solution[2] = inverse[2]! * a + inverse[4]! * b + inverse[5]! * c;
    visited[0] = 0;
    let count = 1;
    rhs[0] = 0;
    rhs[1] = 0;
    rhs[2] = 0;
    const stack = this.#stack;
    let height = 0;
    stack[height++] = this.#top;
    while (height > 0) {
      const station = stack[--height]!;
      const l = 3 * this.#endLeft[station]!;
      const r = 3 * this.#endRight[station]!;
      const u0 = solution[l]!;
      const u1 = solution[l + 1]!;
      const u2 = solution[l + 2]!;
      const v0 = solution[r]!;
      const v1 = solution[r + 1]!;
      const v2 = solution[r + 2]!;
      const active = loaded[station] === 1;
      if (
        !active &&
        Math.abs(u0) < reach &&
        Math.abs(u1) < reach &&
        Math.abs(u2) < reach &&
        Math.abs(v0) < reach &&
        Math.abs(v1) < reach &&
        Math.abs(v2) < reach
      )
        continue;
      const o = STRIDE * station;
      const s = 3 * station;
      let x = 0;
      let y = 0;
      let z = 0;
      if (active) {
        const g0 = gathered[s]!;
        const g1 = gathered[s + 1]!;
        const g2 = gathered[s + 2]!;
        x = arcs[o + 21]! * g0 + arcs[o + 22]! * g1 + arcs[o + 23]! * g2;
        y = arcs[o + 22]! * g0 + arcs[o + 24]! * g1 + arcs[o + 25]! * g2;
        z = arcs[o + 23]! * g0 + arcs[o + 25]! * g1 + arcs[o + 26]! * g2;
        rhs[s] = 0;
        rhs[s + 1] = 0;
        rhs[s + 2] = 0;
      }
      const m = o + MAP_LEFT;
      x -= arcs[m]! * u0 + arcs[m + 1]! * u1 + arcs[m + 2]! * u2;
      y -= arcs[m + 3]! * u0 + arcs[m + 4]! * u1 + arcs[m + 5]! * u2;
      z -= arcs[m + 6]! * u0 + arcs[m + 7]! * u1 + arcs[m + 8]! * u2;
      x -= arcs[m + 9]! * v0 + arcs[m + 10]! * v1 + arcs[m + 11]! * v2;
      y -= arcs[m + 12]! * v0 + arcs[m + 13]! * v1 + arcs[m + 14]! * v2;
      z -= arcs[m + 15]! * v0 + arcs[m + 16]! * v1 + arcs[m + 17]! * v2;
      solution[s] = x;
      solution[s + 1] = y;
      solution[s + 2] = z;
      visited[count++] = station;
      const left = this.#left[station]!;
      const right = this.#right[station]!;
      if (left < this.count) stack[height++] = left;
      if (right < this.count) stack[height++] = right;
    }
    this.visitedCount = count;
    this.#loaded.clear();
  }

  // Carries the right-hand sides from the stations up to the separators above them.
  #gather(): void {
    const marks = this.#loaded;
    const { rhs, count } = this;
    const arcs = this.#arcs;
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
        const hasLeft = left < count && marks.marked[left] === 1;
        const hasRight = right < count && marks.marked[right] === 1;
        let a = rhs[s]!;
        let b = rhs[s + 1]!;
        let c = rhs[s + 2]!;
        if (hasLeft) {
          a += ends[6 * left + 3]!;
          b += ends[6 * left + 4]!;
          c += ends[6 * left + 5]!;
        }
        if (hasRight) {
          a += ends[6 * right]!;
          b += ends[6 * right + 1]!;
          c += ends[6 * right + 2]!;
        }
        gathered[s] = a;
        gathered[s + 1] = b;
        gathered[s + 2] = c;
        const m = STRIDE * station + MAP_LEFT;
        const e = 6 * station;
        for (let i = 0; i < 3; i++) {
          ends[e + i] =
            (hasLeft ? ends[6 * left + i]! : 0) - (arcs[m + i]! * a + arcs[m + 3 + i]! * b + arcs[m + 6 + i]! * c);
          ends[e + 3 + i] =
            (hasRight ? ends[6 * right + 3 + i]! : 0) -
            (arcs[m + 9 + i]! * a + arcs[m + 12 + i]! * b + arcs[m + 15 + i]! * c);
        }
      }
    }
    if (marks.marked[0] !== 1) gathered.fill(0, 0, 3);
  }
}

/** Stations marked together with all the separators above them, listed by depth. */
class LevelMarks {
  readonly depth: number;
  readonly marked: Uint8Array;
  readonly counts: Int32Array;
  readonly items: Int32Array;
  readonly #size: number;

  constructor(size: number, depth: number) {
    this.depth = depth;
    this.#size = size;
    this.marked = new Uint8Array(size);
    this.counts = new Int32Array(depth);
    this.items = new Int32Array(size * depth);
  }

  markUp(start: number, parent: Int32Array, levelOf: Int32Array): void {
    let station = start;
    while (this.marked[station] === 0) {
      this.marked[station] = 1;
      const level = levelOf[station]!;
      this.items[level * this.#size + this.counts[level]!] = station;
      this.counts[level]! += 1;
      if (station === 0) return;
      station = parent[station]!;
    }
  }

  clear(): void {
    for (let level = 0; level < this.depth; level++) {
      const from = level * this.#size;
      for (let k = from; k < from + this.counts[level]!; k++) this.marked[this.items[k]!] = 0;
      this.counts[level] = 0;
    }
  }
}

// Inverse of a symmetric 3 × 3 matrix by LDLᵀ; false when it is not positive definite.
function invertSymmetric(
  a: number,
  b: number,
  c: number,
  d: number,
  e: number,
  f: number,
  into: Float64Array,
  at: number,
): boolean {
  const l1 = b / a;
  const l2 = c / a;
  const p2 = d - l1 * b;
  const q = e - l1 * c;
  const l3 = q / p2;
  const p3 = f - l2 * c - l3 * q;
  const k = l1 * l3 - l2;
  const r1 = 1 / a;
  const r2 = 1 / p2;
  const r3 = 1 / p3;
  into[at] = r1 + l1 * l1 * r2 + k * k * r3;
  into[at + 1] = -l1 * r2 - k * l3 * r3;
  into[at + 2] = k * r3;
  into[at + 3] = r2 + l3 * l3 * r3;
  into[at + 4] = -l3 * r3;
  into[at + 5] = r3;
  return a > 0 && p2 > 1e-13 * d && p3 > 1e-13 * f;
}
