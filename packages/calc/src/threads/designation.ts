import { refuse } from '../refusal.ts';
import { tableRows, textIn } from '../tables/sourced-table.ts';
import { ISO_METRIC_THREADS } from './tables/iso-metric.ts';
import { UNIFIED_THREADS } from './tables/unified-inch.ts';

/** A thread as parsed from its designation. */
export interface ThreadDesignation {
  /** Canonical form: `M20`, `M20x1.5`, `3/4-10 UNC`, `1 1/8-8 UN`. */
  readonly designation: string;
  readonly system: 'metric' | 'inch';
  readonly nominalDiameter_mm: number;
  readonly pitch_mm: number;
  readonly nominalDiameter_in?: number;
  readonly threadsPerInch?: number;
  /** `coarse`, `fine`, or the unified series. */
  readonly series: string;
}

const MILLIMETRES_PER_INCH = 25.4;

const coarsePitch_mm = new Map<number, number>();
for (const row of tableRows(ISO_METRIC_THREADS)) {
  if (textIn(row, 'series') === 'coarse') {
    coarsePitch_mm.set(Number(textIn(row, 'designation').slice(1)), Number(textIn(row, 'pitch_mm')));
  }
}
/** Pitches of ISO 261; a designation with another one is a typing error. */
const METRIC_PITCHES_MM = [0.5, 0.75, 1, 1.25, 1.5, 1.75, 2, 2.5, 3, 3.5, 4, 4.5, 5, 5.5, 6, 8];
const UNIFIED_SERIES = ['UNC', 'UNF', 'UNEF', 'UN', '8UN', 'UNS', 'UNJ', 'UNR', 'UNRC'];

const unifiedByDesignation = new Set(tableRows(UNIFIED_THREADS).map((row) => textIn(row, 'designation')));

function unknown(text: string): never {
  refuse(
    'thread',
    'unknown-thread',
    `"${text}" is not a thread that this calculation knows. Write M20, M20x1.5, 3/4-10 UNC or 1 1/8-8 UN.`,
  );
}

function metric(text: string, diameterText: string, pitchText: string | undefined): ThreadDesignation {
  const diameter_mm = Number(diameterText);
  const coarse_mm = coarsePitch_mm.get(diameter_mm);
  const pitch_mm = pitchText === undefined ? coarse_mm : Number(pitchText);
  if (pitch_mm === undefined) {
    refuse(
      'thread',
      'pitch-must-be-given',
      `${text} has no coarse pitch in the table (M6 to M64). Give the pitch, for example ${text}x3.`,
    );
  }
  if (!METRIC_PITCHES_MM.includes(pitch_mm) || diameter_mm < 3 || diameter_mm > 200 || diameter_mm < 4 * pitch_mm) {
    unknown(text);
  }
  const isCoarse = pitch_mm === coarse_mm;
  return {
    designation: isCoarse ? `M${diameter_mm}` : `M${diameter_mm}x${pitch_mm}`,
    system: 'metric',
    nominalDiameter_mm: diameter_mm,
    pitch_mm,
    series: isCoarse ? 'coarse' : 'fine',
  };
}

/** Reads 3/4, 1 1/8, 1-1/8, 0.75 and 2 as inches. */
export function inchesOf(text: string): number | undefined {
  const match = /^(?:(\d+)[\s-]+)?(\d+)\/(\d+)$/.exec(text.trim());
  if (match !== null) {
    const value = Number(match[1] ?? 0) + Number(match[2]) / Number(match[3]);
    return Number.isFinite(value) ? value : undefined;
  }
  return /^\d+(\.\d+)?$|^\.\d+$/.test(text.trim()) ? Number(text) : undefined;
}

/** Writes inches the way a thread designation does: 1.125 is `1 1/8`; odd sizes stay decimal. */
export function inchFraction(inches: number): string {
  const whole = Math.floor(inches);
  for (const denominator of [1, 2, 4, 8, 16]) {
    const numerator = (inches - whole) * denominator;
    if (Math.abs(numerator - Math.round(numerator)) > 1e-9) continue;
    const top = Math.round(numerator);
    if (top === 0) return String(whole);
    return whole === 0 ? `${top}/${denominator}` : `${whole} ${top}/${denominator}`;
  }
  return String(inches);
}

function seriesOf(size: string, threadsPerInch: number): string {
  for (const series of ['UNC', 'UN']) {
    if (unifiedByDesignation.has(`${size}-${threadsPerInch} ${series}`)) return series;
  }
  return 'UN';
}

/**
 * Parses a thread designation, metric or unified, in the spellings of the trade.
 *
 * Source: designations of ISO 261 and ASME B1.1; coarse pitches from the tables of this package.
 * @param text `M20`, `M20x1.5`, `3/4-10 UNC`, `1 1/8-8 UN`, `1-1/8-8 UN`; the series may be left out
 * @throws CalcRefusal `unknown-thread`, `pitch-must-be-given`
 * @example parseThread('1-1/8-8 UN').designation === '1 1/8-8 UN'
 */
export function parseThread(text: string): ThreadDesignation {
  const known = parsed.get(text);
  if (known !== undefined) return known;
  const result = parse(text);
  // Designations are few; the bound only guards against a flood of odd spellings.
  if (parsed.size < 1000) parsed.set(text, result);
  return result;
}

const parsed = new Map<string, ThreadDesignation>();

function parse(text: string): ThreadDesignation {
  const asMetric = /^m\s*(\d+(?:\.\d+)?)(?:\s*[x×*-]\s*(\d+(?:\.\d+)?))?$/i.exec(text.trim());
  if (asMetric !== null) return metric(text.trim(), asMetric[1] ?? '', asMetric[2]);

  const asInch = /^([\d\s/.-]+?)\s*"?\s*-\s*(\d+(?:\.\d+)?)\s*([a-z0-9]+)?$/i.exec(text.trim());
  if (asInch === null) unknown(text);
  const inches = inchesOf(asInch[1] ?? '');
  const threadsPerInch = Number(asInch[2]);
  if (inches === undefined || inches < 0.19 || inches > 6 || threadsPerInch < 3 || threadsPerInch > 56) unknown(text);
  if (inches * threadsPerInch < 4) unknown(text);
  const size = inchFraction(inches);
  const given = asInch[3]?.toUpperCase();
  if (given !== undefined && !UNIFIED_SERIES.includes(given)) unknown(text);
  const series = given === undefined ? seriesOf(size, threadsPerInch) : given === '8UN' ? 'UN' : given;
  return {
    designation: `${size}-${threadsPerInch} ${series}`,
    system: 'inch',
    nominalDiameter_mm: inches * MILLIMETRES_PER_INCH,
    pitch_mm: MILLIMETRES_PER_INCH / threadsPerInch,
    nominalDiameter_in: inches,
    threadsPerInch,
    series,
  };
}
