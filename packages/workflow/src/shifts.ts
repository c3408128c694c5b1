/** A shift of the day, "HH:MM" in the shutdown's zone; one that ends before it starts runs through midnight. */
export interface ShiftDefinition {
  readonly name: string;
  readonly starts: string;
  readonly ends: string;
}

export interface ShiftAt {
  readonly name: string;
  /** the date of a shift is the date it starts */
  readonly day: string;
  readonly start: string;
  readonly end: string;
  /** calendar day of the end, in the zone */
  readonly endDay: string;
}

const DAY_MS = 86_400_000;

interface LocalTime {
  readonly day: string;
  readonly minutes: number;
}

const formatters = new Map<string, Intl.DateTimeFormat>();

function localTime(milliseconds: number, timeZone: string): LocalTime {
  let format = formatters.get(timeZone);
  if (!format) {
    format = new Intl.DateTimeFormat('en-CA', {
      timeZone,
      year: 'numeric',
      month: '2-digit',
      day: '2-digit',
      hour: '2-digit',
      minute: '2-digit',
      hourCycle: 'h23',
    });
    formatters.set(timeZone, format);
  }
  const part: Record<string, string> = {};
  for (const { type, value } of format.formatToParts(milliseconds)) part[type] = value;
  return {
    day: `${part['year']}-${part['month']}-${part['day']}`,
    minutes: Number(part['hour']) * 60 + Number(part['minute']),
  };
}

/** The calendar day of an instant in a zone, as YYYY-MM-DD. */
export const dayOf = (instant: string, timeZone: string): string => localTime(Date.parse(instant), timeZone).day;

/** The instant at which a zone's clocks show a day and time. A time that a clock change skips gives the moment after it. */
export function instantOf(day: string, time: string, timeZone: string): string {
  const wanted = Date.parse(`${day}T${time}:00Z`);
  let guess = wanted;
  // Two corrections settle every zone: the first by the offset at the guess, the second across a clock change.
  for (let round = 0; round < 2; round += 1) {
    const shown = localTime(guess, timeZone);
    guess += wanted - (Date.parse(`${shown.day}T00:00:00Z`) + shown.minutes * 60_000);
  }
  return new Date(guess).toISOString();
}

const nextDay = (day: string): string => new Date(Date.parse(`${day}T00:00:00Z`) + DAY_MS).toISOString().slice(0, 10);
const dayBefore = (day: string): string => new Date(Date.parse(`${day}T00:00:00Z`) - DAY_MS).toISOString().slice(0, 10);

function shiftStarting(day: string, shift: ShiftDefinition, timeZone: string): ShiftAt {
  const throughMidnight = shift.ends <= shift.starts;
  const endDay = throughMidnight ? nextDay(day) : day;
  return {
    name: shift.name,
    day,
    start: instantOf(day, shift.starts, timeZone),
    end: instantOf(endDay, shift.ends, timeZone),
    endDay,
  };
}

/**
 * The shift that an instant falls in. Between two shifts it is the rest of the day, as a shift of no name, so that
 * "valid through the shift" then means to the end of that day.
 */
export function shiftAt(instant: string, shifts: readonly ShiftDefinition[], timeZone: string): ShiftAt {
  const at = Date.parse(instant);
  const { day } = localTime(at, timeZone);
  for (const candidate of [day, dayBefore(day)]) {
    for (const shift of shifts) {
      const found = shiftStarting(candidate, shift, timeZone);
      if (Date.parse(found.start) <= at && at < Date.parse(found.end)) return found;
    }
  }
  return {
    name: '',
    day,
    start: instantOf(day, '00:00', timeZone),
    end: instantOf(nextDay(day), '00:00', timeZone),
    endDay: day,
  };
}
