/** One line of a wrench's chart as somebody types it, in the units shown. */
export interface PairDraft {
  readonly pressure: number | undefined;
  readonly torque: number | undefined;
}

export interface Pair {
  readonly pressure: number;
  readonly torque: number;
}

/** What is wrong with a chart: a line half filled in, one line alone, or values that do not rise. */
export type PairsFault = 'half' | 'one' | 'not-rising';

/** Reads the lines that are filled in; a chart needs at least two, rising in pressure and torque. */
export function readPairs(drafts: readonly PairDraft[]): readonly Pair[] | PairsFault {
  const begun = drafts.filter(({ pressure, torque }) => pressure !== undefined || torque !== undefined);
  const pairs: Pair[] = [];
  for (const { pressure, torque } of begun) {
    if (pressure === undefined || torque === undefined) return 'half';
    pairs.push({ pressure, torque });
  }
  if (pairs.length === 1) return 'one';
  const rising = pairs.every((pair, index) => {
    const before = pairs[index - 1];
    return before === undefined || (pair.pressure > before.pressure && pair.torque > before.torque);
  });
  return rising ? pairs : 'not-rising';
}
