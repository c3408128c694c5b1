import { ask, type Cell, plainSigns, quoted, type Reading, read, refuse } from './reading.ts';

export type DecimalMark = '.' | ',';

/** A number in a text where only one reading of its marks is possible, or both where there are two. */
interface NumberReadings {
  readonly point?: number;
  readonly comma?: number;
}

function withMark(text: string, mark: DecimalMark): number | undefined {
  const group = mark === '.' ? ',' : '\\.';
  const decimal = mark === '.' ? '\\.' : ',';
  // Thousands are groups of exactly three behind one to three digits that do not begin with 0.
  const pattern = new RegExp(
    `^[+-]?(?:(?:\\d+|[1-9]\\d{0,2}(?:(?:${group}|[ '’])\\d{3})+)(?:${decimal}\\d*)?|${decimal}\\d+)(?:E[+-]?\\d{1,2})?$`,
  );
  if (!pattern.test(text)) return undefined;
  const plain = text
    .replace(/[ '’]/g, '')
    .replaceAll(mark === '.' ? ',' : '.', '')
    .replace(',', '.');
  const value = Number(plain);
  return Number.isFinite(value) ? value : undefined;
}

/** Both readings of a number text, with a decimal point and with a decimal comma. */
export function numberReadings(text: string): NumberReadings {
  const point = withMark(text.toUpperCase(), '.');
  const comma = withMark(text.toUpperCase(), ',');
  return {
    ...(point === undefined ? {} : { point }),
    ...(comma === undefined ? {} : { comma }),
  };
}

/**
 * Reads a number with decimal point or comma and thousands (`1,234.5`, `1.234,5`, `1 234,5`).
 * `1,234` is 1234 or 1.234: it is asked unless the decimal mark of the column is known.
 *
 * @param cell the cell
 * @param decimal the decimal mark of the column, where known
 */
export function parseNumber(cell: Cell, decimal?: DecimalMark): Reading<number> {
  if (typeof cell === 'number') {
    return Number.isFinite(cell)
      ? read(cell)
      : refuse('number-not-finite', 'The cell holds no finite number. Enter a number.');
  }
  if (cell instanceof Date || typeof cell === 'boolean') {
    return refuse('number-expected', `${quoted(cell)} is no number. Format the cell as a number and enter it again.`);
  }
  const text = plainSigns(cell);
  if (text === '') return refuse('number-missing', 'The cell is empty. Enter a number.');
  const { point, comma } = numberReadings(text);
  const chosen = decimal === '.' ? point : decimal === ',' ? comma : undefined;
  if (chosen !== undefined) return read(chosen);
  if (point !== undefined && comma !== undefined && point !== comma && decimal === undefined) {
    return ask(
      'decimal-mark',
      `Is the decimal mark of this column a point or a comma? ${quoted(cell)} can be either.`,
      [
        { value: '.', label: `point: ${point}` },
        { value: ',', label: `comma: ${comma}` },
      ],
    );
  }
  const only = decimal === undefined ? (point ?? comma) : undefined;
  if (only !== undefined) return read(only);
  const mark = decimal === undefined ? '' : ` with a decimal ${decimal === ',' ? 'comma' : 'point'}`;
  return refuse(
    'number-unreadable',
    `${quoted(cell)} cannot be read as a number${mark}. Enter digits only; the unit belongs in the column header.`,
  );
}

/**
 * Reads a whole number of at least 1, also with words of counting around it: `8`, `8 no`, `8 pcs`, `8 off`.
 *
 * @param cell the cell
 * @param what name of the count in messages, for example `bolt count`
 * @param most the largest plausible count
 */
export function parseCount(cell: Cell, what: string, most: number): Reading<number> {
  const text = plainSigns(cell).replace(/\s*(?:no\.?s?|nos\.?|pcs\.?|off|ea\.?|sets?|x|bolts?|studs?|holes?)$/i, '');
  const number = parseNumber(typeof cell === 'string' ? text : cell);
  const code = what.replaceAll(' ', '-');
  if (number.ok !== true || !Number.isInteger(number.value) || number.value < 1 || number.value > most) {
    return refuse(`${code}-unreadable`, `${quoted(cell)} is no ${what}. Enter a whole number from 1 to ${most}.`);
  }
  return read(number.value);
}
