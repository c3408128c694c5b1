/** Numbers from 0 to 1 that follow from a text (FNV-1a into mulberry32). The seed is never shown to the crew. */
function numbersFrom(seed: string): () => number {
  let state = 2_166_136_261;
  for (let index = 0; index < seed.length; index += 1)
    state = Math.imul(state ^ seed.charCodeAt(index), 16_777_619) >>> 0;
  return () => {
    // mulberry32 (public domain)
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
}

/**
 * The makes of a lot that QC checks: at least one, the share rounded up, the same for the same seed and lot,
 * whatever the order in which the lot is given.
 *
 * @param lotMakeIds the makes of one pack, crew, procedure and shift
 * @param share of the lot, above 0 to 1
 * @param seed kept by the server
 * @throws RangeError when the share is outside its range
 */
export function drawSample(lotMakeIds: readonly string[], share: number, seed: string): readonly string[] {
  if (!(share > 0 && share <= 1)) throw new RangeError(`The share ${share} of a sample is not above 0 and up to 1.`);
  const lot = [...new Set(lotMakeIds)].sort();
  const next = numbersFrom(`${seed}\n${lot.join('\n')}`);
  // Fisher and Yates.
  for (let last = lot.length - 1; last > 0; last -= 1) {
    const chosen = Math.floor(next() * (last + 1));
    [lot[last], lot[chosen]] = [lot[chosen]!, lot[last]!];
  }
  return lot.slice(0, Math.ceil(lot.length * share)).sort();
}
