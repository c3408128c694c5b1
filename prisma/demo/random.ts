/** Numbers that follow from a seed (mulberry32, public domain): the same seed gives the same demo. */
export class SeededRandom {
  #state: number;

  constructor(seed: number) {
    this.#state = seed >>> 0;
  }

  /** From 0 up to, but not including, 1. */
  next(): number {
    this.#state = (this.#state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(this.#state ^ (this.#state >>> 15), this.#state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  }

  /** A whole number from `least` to `most`, both included. */
  whole(least: number, most: number): number {
    return least + Math.floor(this.next() * (most - least + 1));
  }

  pick<T>(from: readonly T[]): T {
    const chosen = from[Math.floor(this.next() * from.length)];
    if (chosen === undefined) throw new Error('There is nothing to pick from.');
    return chosen;
  }

  chance(share: number): boolean {
    return this.next() < share;
  }

  /** A UUIDv7 of the given moment, its random bits from the seed. */
  uuid(at: Date): string {
    const time = at.getTime().toString(16).padStart(12, '0');
    const hex = (digits: number) =>
      Array.from({ length: digits }, () => Math.floor(this.next() * 16).toString(16)).join('');
    const variant = (8 + Math.floor(this.next() * 4)).toString(16);
    return `${time.slice(0, 8)}-${time.slice(8)}-7${hex(3)}-${variant}${hex(3)}-${hex(12)}`;
  }
}
