/**
 * Repeatable random numbers, 0 to 1, from a seed (mulberry32, public domain algorithm by T. Ettinger, from
 * memory). The package itself never draws a seed.
 */
export function seededRandom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}

/** Normally distributed numbers (Box-Muller), cut off at three standard deviations. */
export function seededNormal(seed: number): () => number {
  const random = seededRandom(seed);
  return () => {
    const radius = Math.sqrt(-2 * Math.log(1 - random()));
    return Math.max(-3, Math.min(3, radius * Math.cos(2 * Math.PI * random())));
  };
}
