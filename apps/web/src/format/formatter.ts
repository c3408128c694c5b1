import {
  asDate,
  datesIn,
  figuresIn,
  type Instant,
  NO_VALUE,
  type QuantityName,
  toHeld,
  toShown,
  UNIT_GAP,
  type UnitChoice,
  unitOf,
} from '@seatwell/contract';
import { type ShiftDefinition, shiftAt } from '@seatwell/workflow';
import { inchFraction } from './fractions.ts';
import { type ParsedNumber, parseNumber } from './parse-number.ts';

/** What stands where there is no value. */
export const noValue = NO_VALUE;

export interface FormatChoice extends UnitChoice {
  /** BCP 47 tag */
  readonly language: string;
  /** IANA zone of the site: times mean the same on every device */
  readonly timeZone: string;
  readonly shifts?: readonly ShiftDefinition[];
}

export type Formatter = ReturnType<typeof createFormatter>;

/**
 * The one formatter of the app: numbers, units and dates as paper has them too, and what only a screen needs.
 * Missing values come out as a dash; a value that is not a finite number throws, because a sheet must never
 * show it.
 */
export function createFormatter(choice: FormatChoice) {
  const figures = figuresIn(choice);
  const dates = datesIn(choice);

  return {
    ...figures,
    ...dates,
    /** what somebody typed in their unit, in the API's unit */
    parse: (name: QuantityName, entered: string): ParsedNumber => {
      const parsed = parseNumber(entered, figures.decimalMark);
      if (parsed.kind !== 'number') return parsed;
      return { kind: 'number', value: toHeld(parsed.value, unitOf(name, choice)) };
    },
    toHeld: (name: QuantityName, shown: number) => toHeld(shown, unitOf(name, choice)),
    toShown: (name: QuantityName, held: number) => toShown(held, unitOf(name, choice)),
    /** an inch size as a fraction where it is one: 1⅛ in */
    inches: (inches: number) => `${inchFraction(inches) ?? figures.significant(inches, 4)}${UNIT_GAP}in`,
    /** the shift an instant belongs to: its name and the day it starts, also after midnight */
    shift: (instant: Instant) => {
      const shifts = choice.shifts ?? [];
      if (shifts.length === 0) return dates.day(instant);
      const at = shiftAt(asDate(instant).toISOString(), shifts, choice.timeZone);
      return `${at.name}, ${dates.calendarDay(at.day)}`;
    },
    /** a time span: 14 min, 3 h 20 min, 2 d 4 h */
    duration,
    /** a file's size: 3.2 MB */
    bytes: (bytes: number) => {
      const [divisor, symbol] = bytes < 1e6 ? [1e3, 'kB'] : [1e6, 'MB'];
      return `${figures.number(bytes / divisor, bytes < 1e6 ? 0 : 1)}${UNIT_GAP}${symbol}`;
    },
  };
}

function duration(minutes: number): string {
  if (!Number.isFinite(minutes)) throw new RangeError(`${minutes} is not a number that can be shown.`);
  const total = Math.round(minutes);
  if (total < 60) return `${total}${UNIT_GAP}min`;
  const hours = Math.floor(total / 60);
  if (hours < 48) return total % 60 === 0 ? `${hours}${UNIT_GAP}h` : `${hours}${UNIT_GAP}h ${total % 60}${UNIT_GAP}min`;
  return hours % 24 === 0
    ? `${hours / 24}${UNIT_GAP}d`
    : `${Math.floor(hours / 24)}${UNIT_GAP}d ${hours % 24}${UNIT_GAP}h`;
}
