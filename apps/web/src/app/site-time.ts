import { instantOf } from '@seatwell/workflow';

/** Day and time that the site's clocks show at an instant, as a picker takes them: 2026-11-25T06:30. */
export function siteMinute(instant: Date, timeZone: string): string {
  const written = new Intl.DateTimeFormat('sv-SE', {
    timeZone,
    year: 'numeric',
    month: '2-digit',
    day: '2-digit',
    hour: '2-digit',
    minute: '2-digit',
    hourCycle: 'h23',
  }).format(instant);
  return written.replace(' ', 'T');
}

/** The instant that a picker's day and time mean at the site, wherever the device is. */
export function siteInstant(picked: string, timeZone: string): string {
  return instantOf(picked.slice(0, 10), picked.slice(11, 16), timeZone);
}
