import { inchNumber, inchText } from './fraction.ts';
import { type Cell, plainSigns, quoted, type Reading, read, refuse, sheetMadeADate } from './reading.ts';

export interface BoltValue {
  /** Designation as the calculation takes it: `M20`, `M30x3`, `5/8-11 UNC`, `1 1/8-8 UN`. */
  readonly thread: string;
  /** Number of bolts, where it stands in the same cell: `8 x M16`. */
  readonly count?: number;
  /** Length, where it stands in the same cell: `M16 x 90`, `5/8" x 4 1/2"`. */
  readonly length_mm?: number;
}

/** Coarse pitches of ISO 261 in mm, up to M64: a written coarse pitch is left out of the designation. */
const coarsePitches: ReadonlyMap<number, number> = new Map([
  [6, 1],
  [8, 1.25],
  [10, 1.5],
  [12, 1.75],
  [14, 2],
  [16, 2],
  [18, 2.5],
  [20, 2.5],
  [22, 2.5],
  [24, 3],
  [27, 3],
  [30, 3.5],
  [33, 3.5],
  [36, 4],
  [39, 4],
  [42, 4.5],
  [45, 4.5],
  [48, 5],
  [52, 5],
  [56, 5.5],
  [60, 5.5],
  [64, 6],
]);
/** Metric diameters above M64 that flange bolting uses; their pitch has to be written. */
const largeMetric: readonly number[] = [68, 70, 72, 76, 80, 82, 85, 90, 95, 100];
/** Threads per inch of UNC up to 1 in (ASME B1.1); flange bolting above 1 in is 8UN (ASME B16.5, B16.47). */
const coarseInch: ReadonlyMap<number, number> = new Map([
  [0.25, 20],
  [0.3125, 18],
  [0.375, 16],
  [0.4375, 14],
  [0.5, 13],
  [0.5625, 12],
  [0.625, 11],
  [0.75, 10],
  [0.875, 9],
  [1, 8],
]);
const largeInch: readonly number[] = [...Array.from({ length: 16 }, (_, step) => 1.125 + step / 8), 3.25, 3.5, 3.75, 4];
const inchDiameters: readonly number[] = [...coarseInch.keys(), ...largeInch];

/** Every thread that flange bolting takes by default: UNC to 1 in, 8UN above, metric coarse. */
export const defaultThreads: readonly string[] = [
  ...inchDiameters.map((diameter) => inchThread(diameter)),
  ...[...coarsePitches.keys()].map((diameter) => `M${diameter}`),
];

function inchThread(diameter: number): string {
  const coarse = coarseInch.get(diameter);
  return coarse === undefined ? `${inchText(diameter)}-8 UN` : `${inchText(diameter)}-${coarse} UNC`;
}

/** Sheets print 5/8 as 0.63 and 1 1/8 as 1.13: two decimals are enough to know the size. */
function inchDiameter(value: number): number | undefined {
  return inchDiameters.find((diameter) => Math.abs(diameter - value) < 0.0051);
}

function metric(text: string, cell: Cell): Reading<BoltValue> | undefined {
  const match = /^M\s*(\d+)(?:\s*[X*×]\s*(\d+(?:[.,]\d+)?))?(?:\s*[X*×]\s*(\d+))?\s*(?:MM)?(?:\s*L(?:G|ONG)?)?$/.exec(
    text,
  );
  if (!match) return undefined;
  const diameter = Number(match[1]);
  const coarse = coarsePitches.get(diameter);
  if (coarse === undefined && !largeMetric.includes(diameter)) {
    return refuse(
      'bolt-not-standard',
      `${quoted(cell)}: M${diameter} is no bolt size of flanges. Correct the bolt size.`,
    );
  }
  const second = match[2] === undefined ? undefined : Number(match[2].replace(',', '.'));
  // M16x2 is a pitch, M16x70 a length: no flange thread has a pitch above 6 mm, no stud is that short.
  const pitch = second !== undefined && second <= 6 ? second : undefined;
  const length = match[3] !== undefined ? Number(match[3]) : pitch === undefined ? second : undefined;
  if (coarse === undefined && pitch === undefined) {
    return refuse(
      'bolt-pitch-missing',
      `${quoted(cell)}: above M64 the pitch must be written, for example M${diameter}x6.`,
    );
  }
  const thread = pitch === undefined || pitch === coarse ? `M${diameter}` : `M${diameter}x${pitch}`;
  return withLength({ thread }, length, 20, cell);
}

function withLength(bolt: BoltValue, length: number | undefined, shortest_mm: number, cell: Cell): Reading<BoltValue> {
  if (length === undefined) return read(bolt);
  if (length < shortest_mm || length > 2000) {
    return refuse(
      'bolt-length-implausible',
      `${quoted(cell)}: a bolt length of ${length} mm is not plausible (${shortest_mm} to 2000 mm). Correct it.`,
    );
  }
  return read({ ...bolt, length_mm: length });
}

function inch(text: string, cell: Cell): Reading<BoltValue> | undefined {
  const match =
    /^([\d.,][\d., /-]*?)\s*("|IN\.?|INCH)?\s*(?:-\s*(\d+(?:\.5)?))?\s*-?\s*(8\s?UN|UNC|UNF|UNR?|N\.?C\.?)?(?:\s*[X*×]\s*([\d.,][\d., /-]*?)\s*("|IN\.?|INCH|MM)?(?:\s*L(?:G|ONG)?)?)?$/.exec(
      text,
    );
  const value = match ? inchNumber(match[1]!) : undefined;
  if (!match || value === undefined) return undefined;
  const [, , mark, perInch, series, lengthText, lengthUnit] = match;
  // Bare numbers: nothing above 4 in and nothing below M6 is a flange bolt, so the two do not meet.
  if (!mark && !perInch && !series && !lengthText && value > 4 && Number.isInteger(value))
    return metric(`M${value}`, cell);
  const diameter = inchDiameter(value);
  if (diameter === undefined) {
    return refuse(
      'bolt-not-standard',
      `${quoted(cell)}: ${inchText(value)} in is no bolt size of flanges. Correct the bolt size.`,
    );
  }
  const thread = namedThread(diameter, perInch, series);
  if (thread === undefined) {
    return refuse(
      'bolt-thread-unknown',
      `${quoted(cell)}: this thread is not in ASME B1.1 as written. Write it as ${inchThread(diameter)}.`,
    );
  }
  if (!lengthText) return read({ thread });
  const length = inchNumber(lengthText);
  if (length === undefined) return undefined;
  const inMillimetres = lengthUnit === 'MM' || (lengthUnit === undefined && length > 40);
  return withLength({ thread }, inMillimetres ? length : Math.round(length * 254) / 10, 25, cell);
}

/** Series and threads per inch as written; where they are the flange bolting default, its usual name. */
function namedThread(diameter: number, perInch: string | undefined, series: string | undefined): string | undefined {
  const standard = coarseInch.get(diameter) ?? 8;
  const name = series?.replace(/[\s.]/g, '');
  if (name === '8UN') return perInch === undefined || perInch === '8' ? inchThread8(diameter) : undefined;
  if (perInch !== undefined) {
    const count = Number(perInch);
    if (count === standard && name !== 'UNF') return inchThread(diameter);
    return name === undefined ? undefined : `${inchText(diameter)}-${count} ${name.startsWith('N') ? 'UNC' : name}`;
  }
  if (name === undefined || name === 'UN' || name === 'UNR') return inchThread(diameter);
  // UNC above 1 in is 7, 6, 5 or 4.5 threads: nobody means it by accident, so it has to be written out.
  return (name === 'UNC' || name === 'NC') && diameter <= 1 ? inchThread(diameter) : undefined;
}

function inchThread8(diameter: number): string {
  return diameter === 1 ? inchThread(1) : `${inchText(diameter)}-8 UN`;
}

/**
 * Reads a bolt: `5/8"`, `5/8-11 UNC`, `1 1/8`, `1.125`, `M16`, `M 16`, `M16x2`, also with count and length
 * (`8 x M16 x 90`). Without a series it takes the one of flange bolting: UNC to 1 in, 8UN above (ASME B16.5).
 */
export function parseBolt(cell: Cell): Reading<BoltValue> {
  if (cell instanceof Date) return sheetMadeADate('bolt size', cell);
  const text = plainSigns(cell).toUpperCase();
  if (text === '') return refuse('bolt-missing', 'The bolt size is empty. Enter a size such as 5/8" or M16.');
  const counted =
    /^(\d{1,3})\s*(?:[X*×]|NO\.?S?|OFF|PCS\.?)\s*(?:OFF\s*)?((?:M\s*\d|\d+\s*\/|\d+[ -]\d+\/|\d+\s*").*)$/.exec(text);
  const bolt = counted
    ? (metric(counted[2]!, cell) ?? inch(counted[2]!, cell))
    : (metric(text, cell) ?? inch(text, cell));
  if (bolt === undefined) {
    return refuse(
      'bolt-unreadable',
      `${quoted(cell)} cannot be read as a bolt size. Write it as 5/8", 1 1/8-8 UN or M16.`,
    );
  }
  return counted && bolt.ok ? read({ ...bolt.value, count: Number(counted[1]) }) : bolt;
}
