import { type DateOrder, dateReadings } from './date.ts';
import { type DecimalMark, numberReadings } from './number-text.ts';
import { parseRating, type RatingSystem } from './rating.ts';
import { type Cell, plainSigns } from './reading.ts';
import { parseSize, type SizeSystem } from './size.ts';

/** A longer text is no number, size or date. */
const longestEvidence = 60;

/** The single vote of all cells that have one; undefined where none votes or where they disagree. */
function unanimous<T>(cells: Iterable<Cell>, vote: (cell: Cell) => T | undefined): T | undefined {
  let found: T | undefined;
  for (const cell of cells) {
    if (typeof cell === 'string' && cell.length > longestEvidence) continue;
    const voted = vote(cell);
    if (voted === undefined) continue;
    if (found !== undefined && found !== voted) return undefined;
    found = voted;
  }
  return found;
}

const isBare = (cell: Cell) => typeof cell === 'number' || /^\d[\d.,]*$/.test(plainSigns(cell));

/** What the bare numbers of a size column mean, where some of them can only be inches or only be millimetres. */
export function sizeSystemOf(cells: Iterable<Cell>): SizeSystem | undefined {
  return unanimous(cells, (cell) => {
    const reading = isBare(cell) ? parseSize(cell) : undefined;
    if (reading?.ok !== true) return undefined;
    return reading.value.size.startsWith('NPS') ? 'NPS' : 'DN';
  });
}

/** What the header of a size column says about bare numbers. */
export function sizeSystemOfHeader(header: Cell): SizeSystem | undefined {
  const text = plainSigns(header).toLowerCase();
  const inches = /\b(nps|inch(es)?)\b|"|[([]\s*in\.?\s*[)\]]|\bin$/.test(text);
  const millimetres = /\b(dn|mm)\b/.test(text);
  return inches === millimetres ? undefined : inches ? 'NPS' : 'DN';
}

/** What the bare numbers of a rating column mean, by those that can only be a class or only be a PN. */
export function ratingSystemOf(cells: Iterable<Cell>): RatingSystem | undefined {
  return unanimous(cells, (cell) => {
    const reading = parseRating(cell);
    if (reading.ok !== true) return undefined;
    return reading.value.rating.startsWith('PN') ? 'PN' : 'class';
  });
}

/** What the header of a rating column says about bare numbers. */
export function ratingSystemOfHeader(header: Cell): RatingSystem | undefined {
  const text = plainSigns(header).toLowerCase();
  const pn = /\bpn\b/.test(text);
  const asmeClass = /\b(class|cl|lbs?|ansi|asme)\b|#/.test(text);
  return pn === asmeClass ? undefined : pn ? 'PN' : 'class';
}

/** The order of the numeric dates of a column, by those that have one order only (13/05, 05/13). */
export function dateOrderOf(cells: Iterable<Cell>): DateOrder | undefined {
  return unanimous(cells, (cell) => {
    if (typeof cell !== 'string' || !/^\s*\d{1,2}\s*[/-]/.test(cell)) return undefined;
    const orders = [...dateReadings(cell).keys()];
    return orders.length === 1 ? orders[0] : undefined;
  });
}

/** The decimal mark, by numbers that have one reading only (12,5 or 1.234,5). */
export function decimalMarkOf(cells: Iterable<Cell>): DecimalMark | undefined {
  return unanimous(cells, (cell) => {
    if (typeof cell !== 'string' || !/\d[.,]\d/.test(cell)) return undefined;
    const { point, comma } = numberReadings(
      plainSigns(cell)
        .replace(/[^\d.,' ]+$/, '')
        .trim(),
    );
    if (point === comma) return undefined;
    if (comma === undefined) return '.';
    return point === undefined ? ',' : undefined;
  });
}
