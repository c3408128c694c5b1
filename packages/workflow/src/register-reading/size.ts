import { inchNumber, inchText } from './fraction.ts';
import { nearest, nominalDiameters, nominalPipeSizes } from './nominal-sizes.ts';
import { ask, type Cell, plainSigns, quoted, type Reading, read, refuse, sheetMadeADate } from './reading.ts';

/** How bare numbers of a size column are meant: inches (NPS) or millimetres (DN). */
export type SizeSystem = 'NPS' | 'DN';

export interface SizeValue {
  /** `NPS1.5` or `DN40`: the keys of the calculation. */
  readonly size: string;
}

const isNps = (value: number) => nominalPipeSizes.includes(value);
const isDn = (value: number) => nominalDiameters.includes(value);
// DN 6 and DN 8 exist but no flange standard starts below DN 10: a bare 6 or 8 is a size in inches.
const isBareDn = (value: number) => value >= 10 && isDn(value);

function nps(value: number, cell: Cell): Reading<SizeValue> {
  if (isNps(value)) return read({ size: `NPS${value}` });
  const near = nearest(nominalPipeSizes, value).map((size) => `NPS ${inchText(size)}`);
  return refuse(
    'size-not-nominal',
    `${quoted(cell)} is no nominal pipe size; the nearest are ${near.join(' and ')}. Correct the size.`,
  );
}

function dn(value: number, cell: Cell): Reading<SizeValue> {
  if (isDn(value)) return read({ size: `DN${value}` });
  const near = nearest(nominalDiameters, value).map((size) => `DN ${size}`);
  return refuse(
    'size-not-nominal',
    `${quoted(cell)} is no nominal diameter; the nearest are ${near.join(' and ')}. Correct the size.`,
  );
}

function askSystem(value: number, cell: Cell): Reading<SizeValue> {
  return ask(
    'size-system',
    `Are the sizes of this column inches (NPS) or millimetres (DN)? ${quoted(cell)} can be either.`,
    [
      { value: 'NPS', label: `inches: NPS ${value}` },
      { value: 'DN', label: `millimetres: DN ${value}` },
    ],
  );
}

function bare(value: number, cell: Cell, system: SizeSystem | undefined): Reading<SizeValue> {
  if (system === 'NPS') return nps(value, cell);
  if (system === 'DN') return dn(value, cell);
  if (isNps(value) && isBareDn(value)) return askSystem(value, cell);
  return isBareDn(value) ? dn(value, cell) : nps(value, cell);
}

/** NB, nominal bore, is written after inches and after millimetres alike. */
function nominalBore(value: number, cell: Cell, system: SizeSystem | undefined): Reading<SizeValue> {
  if (system !== undefined) return bare(value, cell, isNps(value) && isDn(value) ? system : undefined);
  if (value === 6 || value === 8) return askSystem(value, cell);
  return isDn(value) ? dn(value, cell) : nps(value, cell);
}

/**
 * Reads a nominal size: `1 1/2"`, `1.5`, `1½`, `1-1/2`, `1 1/2 in`, `NPS 1½`, `DN40`, `DN 40`, `40 NB`, `50 mm`.
 * A bare number that is both an NPS and a DN (10, 20, 32, 40, 50) is asked unless the column says which.
 *
 * @param cell the cell
 * @param system what bare numbers of this column mean, where known
 */
export function parseSize(cell: Cell, system?: SizeSystem): Reading<SizeValue> {
  if (cell instanceof Date) return sheetMadeADate('size', cell);
  const text = plainSigns(cell).toUpperCase();
  if (text === '') return refuse('size-missing', 'The size is empty. Enter a size such as 1 1/2" or DN40.');
  if (/\d\s*"?\s*(X|×)\s*\d/.test(text)) {
    return refuse(
      'two-sizes',
      `${quoted(cell)} names two sizes, a joint has one. Enter the size of this joint's flanges.`,
    );
  }
  const match =
    /^(?:(DN|NW|ND|NPS|NB)\s*\.?\s*)?([\d.][\d .,/-]*?)\s*("|INCHES|INCH|INS\.?|IN\.?|MM)?\s*(NB|NPS|DN)?$/.exec(text);
  const value = match ? inchNumber(match[2]!) : undefined;
  if (!match || value === undefined) {
    return refuse(
      'size-unreadable',
      `${quoted(cell)} cannot be read as a nominal size. Write it as 1 1/2" or NPS 1 1/2, or as DN 40.`,
    );
  }
  const [, before, digits, unit, after] = match;
  const inches = unit !== undefined && unit !== 'MM';
  const names = [before, after].map((name) => (name === 'NW' || name === 'ND' ? 'DN' : name));
  if ((names.includes('DN') && inches) || (names.includes('NPS') && unit === 'MM')) {
    return refuse(
      'size-contradicts-itself',
      `${quoted(cell)} names inches and millimetres at once. Write it as NPS or as DN.`,
    );
  }
  if (names.includes('NPS') || inches || digits!.includes('/')) {
    return names.includes('DN') ? dn(value, cell) : nps(value, cell);
  }
  if (names.includes('DN') || unit === 'MM') return dn(value, cell);
  if (names.includes('NB')) return nominalBore(value, cell, system);
  return bare(value, cell, system);
}
