import { convert } from '@seatwell/calc';
import { type Dates, datesIn, figuresIn, type Language, type UnitChoice } from '@seatwell/contract';

/** Units of who prints; set values stand in both systems on every sheet. */
export type PaperUnits = UnitChoice['system'];
export type PaperFigures = ReturnType<typeof paperFigures>;

/**
 * Numbers, quantities and dates as paper prints them, with the marks of its language and the units of who prints: the
 * formatter of the screens, with thousands told apart by spaces, since a sheet is read by people of several languages.
 */
export function paperFigures(language: Language, system: PaperUnits) {
  const figures = figuresIn({ language, system, thousands: 'by-spaces' });
  const zones = new Map<string, Dates>();
  const datesOf = (timeZone: string): Dates => {
    const known = zones.get(timeZone);
    if (known) return known;
    const made = datesIn({ language, timeZone });
    zones.set(timeZone, made);
    return made;
  };
  /** At least three digits that count, no false precision. */
  const printed = (value: number): string => {
    if (!Number.isFinite(value)) throw new RangeError(`A value for paper is ${value}; it must be a finite number.`);
    return figures.upTo(Math.abs(value) >= 100 ? Math.round(value) : Number(value.toPrecision(3)), 12);
  };
  /** As entered, at most two decimals. */
  const dimension = (value: number): string => figures.upTo(value, 2);
  const SI = system === 'SI';
  return {
    printed,
    dimension,
    /** the number of a temperature, without its unit */
    degrees: (temperature_C: number): string =>
      SI ? dimension(temperature_C) : figures.value('temperature', temperature_C),
    /** a number that counts something, or a factor as its source has it */
    plain: (value: number): string => figures.upTo(value, 6),
    footPounds: (torque_Nm: number): string => printed(convert('torque', torque_Nm, 'N·m', 'lbf·ft')),
    gapUnit: SI ? 'mm' : 'in',
    temperatureUnit: SI ? '°C' : '°F',
    /** a length with its unit, as entered in millimetres or in inches to a hundredth */
    length: (length_mm: number): string =>
      SI ? `${dimension(length_mm)} mm` : `${figures.value('length', length_mm)} in`,
    studLength: (length_mm: number): string =>
      SI ? `${printed(length_mm)} mm` : `${figures.value('length', length_mm)} in`,
    /** something small that is measured, with its unit: gaps, flatness */
    gap: (gap_mm: number): string => (SI ? `${dimension(gap_mm)} mm` : `${figures.value('gap', gap_mm)} in`),
    bar: (pressure_MPa: number): string => printed(pressure_MPa * 10),
    pressure: (pressure_MPa: number): string =>
      SI ? `${dimension(pressure_MPa * 10)} bar` : `${figures.value('pressure', pressure_MPa)} psi`,
    temperature: (temperature_C: number): string =>
      SI ? `${dimension(temperature_C)} °C` : `${figures.value('temperature', temperature_C)} °F`,
    distance: (distance_m: number): string =>
      SI ? `${Math.ceil(distance_m)} m` : `${Math.ceil(distance_m / 0.3048)} ft`,
    /** a date with its time in the shutdown's zone, to the minute */
    localTime: (instant: string, timeZone: string): string => datesOf(timeZone).datedTime(instant),
    /** a calendar day of the record (2027-03-09) */
    day: (isoDay: string): string => datesOf('UTC').datedDay(isoDay),
    /** a calendar day where there is little room */
    shortDay: (isoDay: string): string => datesOf('UTC').shortDay(isoDay),
  };
}
