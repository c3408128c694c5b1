import { localeOf } from './locale.ts';
import { type QuantityName, toShown, type UnitChoice, unitOf } from './quantities.ts';

/** Narrow no-break space: number and unit stay on one line. */
export const UNIT_GAP = '\u202f';
/** What stands where there is no value. */
export const NO_VALUE = '–';
const NO_BREAK_SPACE = '\u00a0';
const APART_FROM_DIGITS = 5;

export interface FiguresChoice extends UnitChoice {
  /** BCP 47 tag */
  readonly language: string;
  /**
   * How thousands are told apart. Paper goes from hand to hand between people of several languages: there 1.153 must
   * not be a thousand to one and one to the other, so it takes spaces, from five digits (ISO 80000-1:2022, 7.3.2).
   */
  readonly thousands?: 'as-in-language' | 'by-spaces';
}

export type Figures = ReturnType<typeof figuresIn>;

/**
 * The one writer of numbers and quantities, for screens and paper.
 * Missing values come out as a dash.
 * @throws RangeError for a value that is not a finite number, because a sheet must never show it
 */
export function figuresIn(choice: FiguresChoice) {
  const locale = localeOf(choice.language);
  const bySpaces = choice.thousands === 'by-spaces';
  const formats = new Map<string, Intl.NumberFormat>();
  const formatOf = (least: number, most: number): Intl.NumberFormat => {
    const key = `${least} ${most}`;
    const known = formats.get(key);
    if (known) return known;
    const grouping = bySpaces ? { useGrouping: false } : {};
    const made = new Intl.NumberFormat(locale, {
      minimumFractionDigits: least,
      maximumFractionDigits: most,
      ...grouping,
    });
    formats.set(key, made);
    return made;
  };
  const written = (value: number, least: number, most: number): string => {
    const text = formatOf(least, most).format(finite(value));
    // Only the digits before the decimal mark: 0.00513 has no thousands.
    return bySpaces ? text.replace(/^\D*\d{5,}/, apart) : text;
  };

  const mark = new Intl.NumberFormat(locale).formatToParts(1.5).find((part) => part.type === 'decimal')?.value;
  const count = (value: number) => written(value, 0, 0);
  const number = (value: number, decimals: number) => written(value, decimals, decimals);
  const significant = (shown: number, digits: number) => {
    if (shown === 0) return '0';
    // Digits before the decimal mark are never rounded away: 1,153 N·m stays 1,153 and is not 1,150.
    const magnitude = Math.floor(Math.log10(Math.abs(shown))) + 1;
    return number(shown, Math.min(6, Math.max(0, digits - magnitude)));
  };
  const value = (quantity: QuantityName, held: number | null | undefined) => {
    if (held === null || held === undefined) return NO_VALUE;
    const unit = unitOf(quantity, choice);
    const shown = toShown(finite(held), unit);
    if ('decimals' in unit.precision)
      return number(noNegativeZero(shown, unit.precision.decimals), unit.precision.decimals);
    return significant(shown, unit.precision.significant);
  };
  const unit = (quantity: QuantityName) => unitOf(quantity, choice).symbol;

  return {
    decimalMark: mark === ',' ? (',' as const) : ('.' as const),
    /** a whole number: 2,310 */
    count,
    /** a number without unit, with fixed decimals */
    number,
    /** a number without unit, with at most so many decimals and no empty ones: 4.5, 170 */
    upTo: (value: number, decimals: number) => written(value, 0, decimals),
    /** a number without unit, with at least so many digits that count */
    significant,
    /** the number of a quantity in the person's unit, without the unit */
    value,
    /** the symbol of the unit in which the person sees a quantity */
    unit,
    /** number and unit: 475 N·m */
    quantity: (name: QuantityName, held: number | null | undefined) =>
      held === null || held === undefined ? NO_VALUE : `${value(name, held)}${UNIT_GAP}${unit(name)}`,
    /** a share (0.7) as 70 % */
    percent: (share: number, decimals = 0) => `${number(share * 100, decimals)}${UNIT_GAP}%`,
    /** a range of a quantity: 220–331 MPa */
    range: (name: QuantityName, low: number, high: number) =>
      `${value(name, low)}–${value(name, high)}${UNIT_GAP}${unit(name)}`,
  };
}

function apart(digits: string): string {
  return digits.length < APART_FROM_DIGITS ? digits : digits.replace(/\B(?=(\d{3})+$)/g, NO_BREAK_SPACE);
}

function finite(value: number): number {
  if (!Number.isFinite(value)) throw new RangeError(`${value} is not a number that can be shown.`);
  return value;
}

function noNegativeZero(value: number, decimals: number): number {
  return Math.abs(value) < 0.5 / 10 ** decimals ? 0 : value;
}
