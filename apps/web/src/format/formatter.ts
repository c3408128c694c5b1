import { type ShiftDefinition, shiftAt } from '@seatwell/workflow';
import { inchFraction } from './fractions.ts';
import { localeOf } from './locale.ts';
import { type ParsedNumber, parseNumber } from './parse-number.ts';
import { type QuantityName, toHeld, toShown, type UnitChoice, unitOf } from './quantities.ts';

/** Narrow no-break space: number and unit stay on one line. */
const gap = '\u202f';
/** What stands where there is no value. */
export const noValue = '–';

export interface FormatChoice extends UnitChoice {
  /** BCP 47 tag */
  readonly language: string;
  /** IANA zone of the site: times mean the same on every device */
  readonly timeZone: string;
  readonly shifts?: readonly ShiftDefinition[];
}

export type Instant = string | number | Date;
export type Formatter = ReturnType<typeof createFormatter>;

/**
 * The one formatter of the app: numbers, units, dates.
 * Missing values come out as a dash; a value that is not a finite number throws, because a sheet must never
 * show it.
 */
export function createFormatter(choice: FormatChoice) {
  const { timeZone } = choice;
  const language = localeOf(choice.language);
  const numberFormat = (options: Intl.NumberFormatOptions) => new Intl.NumberFormat(language, options);
  const dateFormat = (options: Intl.DateTimeFormatOptions) =>
    new Intl.DateTimeFormat(language, { timeZone, hourCycle: 'h23', ...options });
  const wholeNumber = numberFormat({ maximumFractionDigits: 0 });
  const dayFormat = dateFormat({ weekday: 'short', day: 'numeric', month: 'short' });
  const longDayFormat = dateFormat({ weekday: 'long', day: 'numeric', month: 'long', year: 'numeric' });
  const timeFormat = dateFormat({ hour: '2-digit', minute: '2-digit' });
  const datedDayFormat = dateFormat({ day: 'numeric', month: 'short', year: 'numeric', timeZone: 'UTC' });
  // A calendar day is no instant: it is formatted where it has no zone.
  const plainDayFormat = dateFormat({ weekday: 'short', day: 'numeric', month: 'short', timeZone: 'UTC' });
  const shortDayFormat = dateFormat({ day: 'numeric', month: 'short', timeZone: 'UTC' });
  const mark = numberFormat({})
    .formatToParts(1.5)
    .find((part) => part.type === 'decimal')?.value;
  const decimalMark = mark === ',' ? ',' : '.';

  const count = (value: number) => wholeNumber.format(finite(value));
  const number = (value: number, decimals: number) =>
    numberFormat({ minimumFractionDigits: decimals, maximumFractionDigits: decimals }).format(finite(value));
  const value = (quantity: QuantityName, held: number | null | undefined) => {
    if (held === null || held === undefined) return noValue;
    const unit = unitOf(quantity, choice);
    const shown = toShown(finite(held), unit);
    if ('decimals' in unit.precision)
      return number(noNegativeZero(shown, unit.precision.decimals), unit.precision.decimals);
    return significant(shown, unit.precision.significant);
  };
  const significant = (shown: number, digits: number) => {
    if (shown === 0) return '0';
    // Digits before the decimal mark are never rounded away: 1,153 N·m stays 1,153 and is not 1,150.
    const magnitude = Math.floor(Math.log10(Math.abs(shown))) + 1;
    return number(shown, Math.min(6, Math.max(0, digits - magnitude)));
  };
  const unit = (quantity: QuantityName) => unitOf(quantity, choice).symbol;
  const quantity = (name: QuantityName, held: number | null | undefined) =>
    held === null || held === undefined ? noValue : `${value(name, held)}${gap}${unit(name)}`;
  const percent = (share: number, decimals = 0) => `${number(share * 100, decimals)}${gap}%`;
  const day = (instant: Instant) => dayFormat.format(asDate(instant));
  const time = (instant: Instant) => timeFormat.format(asDate(instant));

  return {
    /** a whole number: 2,310 */
    count,
    /** a number without unit, with fixed decimals */
    number,
    /** the number of a quantity in the person's unit, without the unit */
    value,
    /** the symbol of the unit in which the person sees a quantity */
    unit,
    /** number and unit: 475 N·m */
    quantity,
    /** a share (0.7) as 70 % */
    percent,
    /** a range of a quantity: 220–331 MPa */
    range: (name: QuantityName, low: number, high: number) =>
      `${value(name, low)}–${value(name, high)}${gap}${unit(name)}`,
    /** what somebody typed in their unit, in the API's unit */
    parse: (name: QuantityName, entered: string): ParsedNumber => {
      const parsed = parseNumber(entered, decimalMark);
      if (parsed.kind !== 'number') return parsed;
      return { kind: 'number', value: toHeld(parsed.value, unitOf(name, choice)) };
    },
    toHeld: (name: QuantityName, shown: number) => toHeld(shown, unitOf(name, choice)),
    toShown: (name: QuantityName, held: number) => toShown(held, unitOf(name, choice)),
    /** an inch size as a fraction where it is one: 1⅛ in */
    inches: (inches: number) => `${inchFraction(finite(inches)) ?? significant(inches, 4)}${gap}in`,
    /** Tue 9 Mar */
    day,
    /** Tuesday 9 March 2027 */
    longDay: (instant: Instant) => longDayFormat.format(asDate(instant)),
    /** 05:52, in the site's zone */
    time,
    /** Tue 9 Mar 05:52 */
    dayTime: (instant: Instant) => `${day(instant)} ${time(instant)}`,
    /** a calendar day of the API (2027-03-09): Tue 9 Mar */
    calendarDay: (isoDay: string) => plainDayFormat.format(asDate(`${isoDay}T12:00:00Z`)),
    /** a calendar day where a column is narrow: 9 Mar */
    shortDay: (isoDay: string) => shortDayFormat.format(asDate(`${isoDay}T12:00:00Z`)),
    /** a calendar day that may be in another year: 9 Mar 2027 */
    datedDay: (isoDay: string) => datedDayFormat.format(asDate(`${isoDay}T12:00:00Z`)),
    /** the shift an instant belongs to: its name and the day it starts, also after midnight */
    shift: (instant: Instant) => {
      const shifts = choice.shifts ?? [];
      if (shifts.length === 0) return day(instant);
      const at = shiftAt(asDate(instant).toISOString(), shifts, timeZone);
      return `${at.name}, ${plainDayFormat.format(asDate(`${at.day}T12:00:00Z`))}`;
    },
    /** a time span: 14 min, 3 h 20 min, 2 d 4 h */
    duration: (minutes: number) => duration(finite(minutes)),
    /** a file's size: 3.2 MB */
    bytes: (bytes: number) => {
      const [divisor, symbol] = bytes < 1e6 ? [1e3, 'kB'] : [1e6, 'MB'];
      return `${number(finite(bytes) / divisor, bytes < 1e6 ? 0 : 1)}${gap}${symbol}`;
    },
  };
}

function finite(value: number): number {
  if (!Number.isFinite(value)) throw new RangeError(`${value} is not a number that can be shown.`);
  return value;
}

function noNegativeZero(value: number, decimals: number): number {
  return Math.abs(value) < 0.5 / 10 ** decimals ? 0 : value;
}

function asDate(instant: Instant): Date {
  const date = new Date(instant);
  if (Number.isNaN(date.getTime())) throw new RangeError(`"${String(instant)}" is not a date or time.`);
  return date;
}

function duration(minutes: number): string {
  const total = Math.round(minutes);
  if (total < 60) return `${total}${gap}min`;
  const hours = Math.floor(total / 60);
  if (hours < 48) return total % 60 === 0 ? `${hours}${gap}h` : `${hours}${gap}h ${total % 60}${gap}min`;
  return hours % 24 === 0 ? `${hours / 24}${gap}d` : `${Math.floor(hours / 24)}${gap}d ${hours % 24}${gap}h`;
}
