import { NOT_NEGATIVE, requireInRange } from '../checks.ts';
import { refuse } from '../refusal.ts';
import { citation, requiredNumberIn, tableRows, textIn } from '../tables/sourced-table.ts';
import type { Warning } from '../working.ts';
import { flangeRating, flangeStandard } from './keys.ts';
import { ASME_B16_5_RATINGS } from './tables/asme-b16-5-ratings.ts';

const CLASSES = ['150', '300', '400', '600', '900', '1500', '2500'];
const BAR_PER_MPA = 10;

interface RatingPoint {
  readonly temperature_C: number;
  readonly pressure_MPa: Readonly<Record<string, number>>;
  readonly note: string;
}

const groups: ReadonlyMap<string, readonly RatingPoint[]> = (() => {
  const byGroup = new Map<string, RatingPoint[]>();
  for (const row of tableRows(ASME_B16_5_RATINGS)) {
    const point: RatingPoint = {
      temperature_C: requiredNumberIn(row, 'temperature_C'),
      pressure_MPa: Object.fromEntries(CLASSES.map((name) => [name, requiredNumberIn(row, name) / BAR_PER_MPA])),
      note: textIn(row, 'note'),
    };
    const group = textIn(row, 'group');
    const points = byGroup.get(group);
    if (points === undefined) byGroup.set(group, [point]);
    else points.push(point);
  }
  return byGroup;
})();

export type RatingAnswer =
  | {
      readonly known: true;
      readonly allowed_MPa: number;
      readonly source: string;
      readonly warnings: readonly Warning[];
    }
  | { readonly known: false; readonly reason: string };

/**
 * Pressure that a rating allows at a temperature, straight between the table's temperatures.
 *
 * Source: ASME B16.5-2009 Tables 2-1.1 and 2-2.2. Other material groups and standards are not held: the answer is
 *   `known: false`, which never blocks a bolt-up.
 * @param input.materialGroup `1.1` or `2.2`
 * @param input.temperature_C −29 to the table's end
 * @throws CalcRefusal `temperature-out-of-table`, `unknown-rating`
 */
export function pressureRating(input: {
  readonly standard: string;
  readonly rating: string;
  readonly materialGroup: string;
  readonly temperature_C: number;
}): RatingAnswer {
  requireInRange([['temperature_C', input.temperature_C, { min: -273, max: 1500 }]]);
  const standard = flangeStandard(input.standard);
  const rating = flangeRating(input.rating);
  const points = groups.get(input.materialGroup);
  if (standard !== 'ASME-B16.5' || points === undefined) {
    return {
      known: false,
      reason: `Ratings are held for ASME B16.5 material groups ${[...groups.keys()].join(' and ')} only; ${standard} group ${input.materialGroup} is not. Check the rating in your edition.`,
    };
  }
  if (!CLASSES.includes(rating)) {
    refuse('rating', 'unknown-rating', `ASME B16.5 has no class ${rating}; it has ${CLASSES.join(', ')}.`);
  }
  const first = points[0];
  const last = points.at(-1);
  const upper = points.findIndex((point) => point.temperature_C >= input.temperature_C);
  const high = points[Math.max(upper, 1)];
  const low = points[Math.max(upper, 1) - 1];
  if (
    upper < 0 ||
    first === undefined ||
    high === undefined ||
    low === undefined ||
    input.temperature_C < first.temperature_C
  ) {
    refuse(
      'temperature_C',
      'temperature-out-of-table',
      `${input.temperature_C} °C is outside the table of group ${input.materialGroup} (${first?.temperature_C} to ${last?.temperature_C} °C).`,
      input.temperature_C < 0 ? first?.temperature_C : last?.temperature_C,
    );
  }
  const share = (input.temperature_C - low.temperature_C) / (high.temperature_C - low.temperature_C);
  const lowPressure_MPa = low.pressure_MPa[rating] ?? Number.NaN;
  const highPressure_MPa = high.pressure_MPa[rating] ?? Number.NaN;
  return {
    known: true,
    allowed_MPa: lowPressure_MPa + share * (highPressure_MPa - lowPressure_MPa),
    source: citation(ASME_B16_5_RATINGS),
    warnings: high.note === '' ? [] : [{ code: 'rating-note', message: high.note }],
  };
}

/** Whether a service lies within the rating; unknown ratings say so. */
export function ratingCheck(input: {
  readonly standard: string;
  readonly rating: string;
  readonly materialGroup: string;
  readonly temperature_C: number;
  readonly pressure_MPa: number;
}): { readonly accepted: boolean | undefined; readonly rating: RatingAnswer } {
  requireInRange([['pressure_MPa', input.pressure_MPa, NOT_NEGATIVE]]);
  const rating = pressureRating(input);
  return { accepted: rating.known ? input.pressure_MPa <= rating.allowed_MPa : undefined, rating };
}
