import { type Facing, parseFacing } from './facing.ts';
import { ask, type Cell, plainSigns, quoted, type Reading, read, refuse } from './reading.ts';

/** What bare numbers of a rating column mean: ASME classes or PN. */
export type RatingSystem = 'class' | 'PN';

export interface RatingValue {
  /** `150` (class) or `PN16`: the keys of the calculation. */
  readonly rating: string;
  /** The facing, where it stands in the same cell: `150# RF`. */
  readonly facing?: Facing;
}

/** Classes of ASME B16.1, B16.5 and B16.47. */
export const classes: readonly number[] = [75, 125, 150, 250, 300, 400, 600, 900, 1500, 2500];
/** Pressure numbers of EN 1092-1. */
export const pressureNumbers: readonly number[] = [2.5, 6, 10, 16, 25, 40, 63, 100, 160, 250, 320, 400];

/** ISO 7005-1 gave the ASME classes PN names of their own (from memory of the 1992 edition). */
const classOfIsoPn: ReadonlyMap<number, number> = new Map([
  [20, 150],
  [50, 300],
  [110, 600],
  [150, 900],
  [260, 1500],
  [420, 2500],
]);

function ofClass(value: number, cell: Cell): Reading<string> {
  if (classes.includes(value)) return read(String(value));
  return refuse(
    'rating-not-a-class',
    `${quoted(cell)}: there is no class ${value}; classes are ${classes.join(', ')}. Correct the rating.`,
  );
}

function ofPn(value: number, cell: Cell): Reading<string> {
  if (pressureNumbers.includes(value)) return read(`PN${value}`);
  const asClass = classOfIsoPn.get(value);
  if (asClass !== undefined) {
    return ask('rating-iso-pn', `PN ${value} is the ISO 7005-1 name of class ${asClass}. Is class ${asClass} meant?`, [
      { value: `class ${asClass}`, label: `class ${asClass}` },
    ]);
  }
  const remedy =
    value === 64
      ? 'PN 64 is the old series, EN 1092-1 has PN 63'
      : `pressure numbers are ${pressureNumbers.join(', ')}`;
  return refuse(
    'rating-not-a-pn',
    `${quoted(cell)}: there is no PN ${value} in EN 1092-1; ${remedy}. Correct the rating.`,
  );
}

function bare(value: number, cell: Cell, system: RatingSystem | undefined): Reading<string> {
  if (system === 'class') return ofClass(value, cell);
  if (system === 'PN') return ofPn(value, cell);
  const isClass = classes.includes(value);
  const isPn = pressureNumbers.includes(value);
  if (isClass && isPn) {
    return ask('rating-system', `Are the ratings of this column classes or PN? ${quoted(cell)} can be either.`, [
      { value: 'class', label: `class ${value}` },
      { value: 'PN', label: `PN ${value}` },
    ]);
  }
  if (isPn) return ofPn(value, cell);
  if (isClass) return ofClass(value, cell);
  return refuse(
    'rating-unknown',
    `${quoted(cell)} is neither a class (${classes.join(', ')}) nor a PN (${pressureNumbers.join(', ')}). Correct the rating.`,
  );
}

function ratingOf(text: string, cell: Cell, system: RatingSystem | undefined): Reading<string> {
  const pn = /^PN\s*\.?\s*(\d+(?:[.,]\d)?)$/.exec(text);
  if (pn) return ofPn(Number(pn[1]!.replace(',', '.')), cell);
  const marked =
    /^(?:(?:ANSI|ASME)\s*)?(?:#|CLASS|CL\.?|C)\s*(\d+)\s*(?:#|LBS?\.?)?$/.exec(text) ??
    /^(?:(?:ANSI|ASME)\s*)?(\d+)\s*(?:#|LBS?\.?|POUNDS?|CLASS|CL)$/.exec(text) ??
    /^(?:ANSI|ASME)\s*(\d+)$/.exec(text);
  if (marked) return ofClass(Number(marked[1]), cell);
  const number = /^\d+(?:[.,]\d)?$/.exec(text);
  if (number) return bare(Number(text.replace(',', '.')), cell, system);
  if (/^(JIS\s*)?\d+\s*K$/.test(text) || /API/.test(text)) {
    return refuse(
      'rating-other-standard',
      `${quoted(cell)} belongs to a standard without flange data here (JIS or API). Enter bolt count and thread in the sheet and leave the rating empty or in the remark.`,
    );
  }
  return refuse(
    'rating-unreadable',
    `${quoted(cell)} cannot be read as a rating. Write it as 150, 150#, Class 150 or PN 16.`,
  );
}

/**
 * Reads a flange rating: `150`, `150#`, `CL150`, `Class 150`, `#150`, `150 lb`, `PN16`, `PN 16`, also with the
 * facing behind it (`300# RF`).
 *
 * @param cell the cell
 * @param system what bare numbers of this column mean, where known; needed for 250 and 400 only
 */
export function parseRating(cell: Cell, system?: RatingSystem): Reading<RatingValue> {
  const text = plainSigns(cell).toUpperCase();
  if (text === '') return refuse('rating-missing', 'The rating is empty. Enter a rating such as 150 or PN 16.');
  const withFacing = /^(.*?\d\s*#?)\s*[-/ ]?\s*(RF|FF|RTJ|RJ)$/.exec(text);
  const rating = ratingOf(withFacing ? withFacing[1]!.trim() : text, cell, system);
  if (rating.ok !== true) return rating;
  const facing = withFacing ? parseFacing(withFacing[2]!) : undefined;
  return read(facing?.ok ? { rating: rating.value, facing: facing.value } : { rating: rating.value });
}
