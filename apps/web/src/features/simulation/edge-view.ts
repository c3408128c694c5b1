/** The flange from its edge, across the diameter where the gap differs most. */
export interface EdgeView {
  readonly wide: { readonly bolt: number; readonly gap_mm: number };
  readonly narrow: { readonly bolt: number; readonly gap_mm: number };
  readonly difference_mm: number;
}

/**
 * The diameter with the largest difference of the gap.
 * @param gap_mm gap of the faces at the edge beside each bolt, clockwise from bolt 1
 */
export function edgeView(gap_mm: readonly number[]): EdgeView {
  const count = gap_mm.length;
  let found: EdgeView | undefined;
  for (let bolt = 0; bolt < count; bolt++) {
    const opposite = (bolt + Math.floor(count / 2)) % count;
    const [one, other] = [gap_mm[bolt] ?? 0, gap_mm[opposite] ?? 0];
    const difference_mm = one - other;
    if (found === undefined || difference_mm > found.difference_mm) {
      found = {
        wide: { bolt: bolt + 1, gap_mm: one },
        narrow: { bolt: opposite + 1, gap_mm: other },
        difference_mm,
      };
    }
  }
  if (found === undefined) throw new RangeError('A flange without bolts has no edge view.');
  return found;
}

const steps = [1, 2, 5];

/** By how much the tilt must be drawn larger so that its largest value is seen: 1, 2, 5, 10, 20 … */
export function exaggeration(largest_mm: number, shown: number): number {
  if (!(largest_mm > 0)) return 1;
  const wanted = shown / largest_mm;
  let factor = 1;
  for (let power = 1; power < 1e6; power *= 10) {
    for (const step of steps) if (step * power <= wanted) factor = step * power;
  }
  return factor;
}

/** How a load stands against the target: within the limit, below, above, or not begun. */
export type LoadStanding = 'none' | 'low' | 'below' | 'within' | 'above';

/** @param limit_percent 10 for ±10 % of target */
export function standingOf(load_percent: number, limit_percent: number): LoadStanding {
  if (load_percent < 1) return 'none';
  if (load_percent > 100 + limit_percent) return 'above';
  if (load_percent >= 100 - limit_percent) return 'within';
  return load_percent < 50 ? 'low' : 'below';
}

/** Whether the bands of the lowest load overlap: the difference between the patterns then means nothing. */
export function equalWithinBand(
  patterns: readonly { readonly band: { readonly low: { min: number }; readonly high: { min: number } } }[],
): boolean {
  const [one, other] = patterns;
  if (!one || !other) return false;
  return one.band.low.min <= other.band.high.min && other.band.low.min <= one.band.high.min;
}
