import { refuse } from '../refusal.ts';
import { citation, numberIn, requiredNumberIn, tableRows, textIn } from '../tables/sourced-table.ts';
import { parseThread } from '../threads/designation.ts';
import { HEAVY_HEX_NUTS_INCH } from './tables/heavy-hex-nuts-inch.ts';
import { HEX_NUTS_METRIC } from './tables/hex-nuts-metric.ts';

export interface Nut {
  readonly thread: string;
  readonly series: 'heavy-hex' | 'hex';
  /** Also the socket size. */
  readonly acrossFlats_mm: number;
  /** Nut height; unknown for metric heavy hex. */
  readonly height_mm?: number;
  /** Least distance between bolt centres for a wrench (TEMA, inch bolting only). */
  readonly minimumSpacing_mm?: number;
  readonly source: string;
}

const INCH_MM = 25.4;

const inchNuts: ReadonlyMap<number, Nut> = new Map(
  tableRows(HEAVY_HEX_NUTS_INCH).map((row) => [
    requiredNumberIn(row, 'size_in'),
    {
      thread: '',
      series: 'heavy-hex',
      acrossFlats_mm: requiredNumberIn(row, 'acrossFlats_mm'),
      height_mm: requiredNumberIn(row, 'height_in') * INCH_MM,
      minimumSpacing_mm: requiredNumberIn(row, 'spacing_in') * INCH_MM,
      source: citation(HEAVY_HEX_NUTS_INCH),
    },
  ]),
);

const metricRows = new Map(tableRows(HEX_NUTS_METRIC).map((row) => [textIn(row, 'thread'), row]));

/**
 * The nut that goes with a thread: heavy hex for inch bolting, ISO 4032 for metric unless heavy hex is asked for.
 *
 * Source: ASME B18.2.2, ISO 4032; metric heavy hex ASME B18.2.4.6M from memory.
 * @throws CalcRefusal `unknown-thread`, `nut-not-in-table`
 * @example nutOf({ thread: '3/4-10 UNC' }).acrossFlats_mm // 31.75
 */
export function nutOf(input: { readonly thread: string; readonly series?: 'heavy-hex' | 'hex' }): Nut {
  const nut = findNut(input);
  if (nut === undefined) {
    refuse(
      'thread',
      'nut-not-in-table',
      `No ${input.series ?? ''} nut for ${input.thread} is in the tables. Measure across flats and height.`,
    );
  }
  return nut;
}

/** As nutOf, undefined instead of a refusal: for answers that can do without the nut. */
export function findNut(input: { readonly thread: string; readonly series?: 'heavy-hex' | 'hex' }): Nut | undefined {
  const { designation, nominalDiameter_in, nominalDiameter_mm } = parseThread(input.thread);
  if (nominalDiameter_in !== undefined) {
    const found = input.series === 'hex' ? undefined : inchNuts.get(nominalDiameter_in);
    return found === undefined ? undefined : { ...found, thread: designation };
  }
  const row = metricRows.get(`M${nominalDiameter_mm}`);
  if (row === undefined) return undefined;
  const heavy_mm = numberIn(row, 'heavyAcrossFlats_mm');
  const hex_mm = numberIn(row, 'acrossFlats_mm');
  const series = input.series ?? (hex_mm === undefined ? 'heavy-hex' : 'hex');
  const acrossFlats_mm = series === 'hex' ? hex_mm : heavy_mm;
  if (acrossFlats_mm === undefined) return undefined;
  const height_mm = numberIn(row, 'height_mm');
  return {
    thread: designation,
    series,
    acrossFlats_mm,
    ...(series === 'hex' && height_mm !== undefined ? { height_mm } : {}),
    source: citation(HEX_NUTS_METRIC),
  };
}
