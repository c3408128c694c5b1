import { small } from './station-index.ts';

/** Stations marked together with all the separators above them, listed by depth. */
export class LevelMarks {
  readonly depth: number;
  readonly marked: Uint8Array;
  readonly counts: Uint16Array;
  readonly items: Uint16Array;
  readonly #size: number;

  constructor(size: number, depth: number) {
    this.depth = depth;
    this.#size = size;
    this.marked = new Uint8Array(size);
    this.counts = new Uint16Array(depth);
    this.items = new Uint16Array(size * depth);
  }

  markUp(start: number, parent: Uint16Array, levelOf: Uint16Array): void {
    let station = small(start);
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
