import { convert } from '@seatwell/calc';

const NO_BREAK_SPACE = '\u00a0';

/**
 * A number as paper prints it: at least three digits, no false precision, thousands apart from 10 000.
 * @throws RangeError for what is not a number: a hole or NaN never reaches paper
 */
export function printed(value: number): string {
  if (!Number.isFinite(value)) throw new RangeError(`A value for paper is ${value}; it must be a finite number.`);
  const rounded = Math.abs(value) >= 100 ? Math.round(value) : Number(value.toPrecision(3));
  const text = String(rounded);
  return Math.abs(rounded) >= 10_000 ? text.replace(/\B(?=(\d{3})+$)/g, NO_BREAK_SPACE) : text;
}

/** A dimension as entered, at most two decimals. */
export const dimension = (value: number): string => String(Number(value.toFixed(2)));

export const footPounds = (torque_Nm: number): string => printed(convert('torque', torque_Nm, 'N·m', 'lbf·ft'));

/** Date and time in the shutdown's zone, to the minute; digits only, so that no language is in it. */
export function localTime(instant: string, timeZone: string): string {
  const parts = new Intl.DateTimeFormat('en-GB', {
    timeZone,
    year: 'numeric',
    month: '2-digit',
    day: '2-digit',
    hour: '2-digit',
    minute: '2-digit',
    hourCycle: 'h23',
  }).formatToParts(new Date(instant));
  const of = (type: string) => parts.find((part) => part.type === type)?.value ?? '';
  return `${of('year')}-${of('month')}-${of('day')} ${of('hour')}:${of('minute')}`;
}
