import { localeOf } from './locale.ts';

export type Instant = string | number | Date;
export type Dates = ReturnType<typeof datesIn>;

/**
 * The one writer of dates and times, for screens and paper.
 * @param timeZone IANA zone of the site: times mean the same on every device and sheet
 * @throws RangeError for what is no date
 */
export function datesIn({ language, timeZone }: { readonly language: string; readonly timeZone: string }) {
  const format = (options: Intl.DateTimeFormatOptions) =>
    new Intl.DateTimeFormat(localeOf(language), { timeZone, hourCycle: 'h23', ...options });
  const dated = { day: 'numeric', month: 'short', year: 'numeric' } as const;
  const dayFormat = format({ weekday: 'short', day: 'numeric', month: 'short' });
  const longDayFormat = format({ weekday: 'long', ...dated, month: 'long' });
  const timeFormat = format({ hour: '2-digit', minute: '2-digit' });
  const datedTimeFormat = format({ ...dated, hour: '2-digit', minute: '2-digit' });
  // A calendar day is no instant: it is formatted where it has no zone.
  const datedDayFormat = format({ ...dated, timeZone: 'UTC' });
  const plainDayFormat = format({ weekday: 'short', day: 'numeric', month: 'short', timeZone: 'UTC' });
  const shortDayFormat = format({ day: 'numeric', month: 'short', timeZone: 'UTC' });
  const noon = (isoDay: string) => asDate(`${isoDay}T12:00:00Z`);

  const day = (instant: Instant) => dayFormat.format(asDate(instant));
  const time = (instant: Instant) => timeFormat.format(asDate(instant));
  return {
    /** Tue 9 Mar */
    day,
    /** Tuesday 9 March 2027 */
    longDay: (instant: Instant) => longDayFormat.format(asDate(instant)),
    /** 05:52, in the site's zone */
    time,
    /** Tue 9 Mar 05:52 */
    dayTime: (instant: Instant) => `${day(instant)} ${time(instant)}`,
    /** where it may be read in another year: 9 Mar 2027, 05:52 */
    datedTime: (instant: Instant) => datedTimeFormat.format(asDate(instant)),
    /** a calendar day of the API (2027-03-09): Tue 9 Mar */
    calendarDay: (isoDay: string) => plainDayFormat.format(noon(isoDay)),
    /** a calendar day where a column is narrow: 9 Mar */
    shortDay: (isoDay: string) => shortDayFormat.format(noon(isoDay)),
    /** a calendar day that may be in another year: 9 Mar 2027 */
    datedDay: (isoDay: string) => datedDayFormat.format(noon(isoDay)),
  };
}

/** An instant as a date. @throws RangeError for what is no date */
export function asDate(instant: Instant): Date {
  const date = new Date(instant);
  if (Number.isNaN(date.getTime())) throw new RangeError(`"${String(instant)}" is not a date or time.`);
  return date;
}
