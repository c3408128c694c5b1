/** A file that the nightly backup has written: its name holds the moment in UTC. */
const BACKUP = /^seatwell-\d{8}T\d{9}Z\.backup$/;

/** The next moment at which the clock in UTC shows the time. @param at hours and minutes, such as 02:00 */
export function nextRun(now: Date, at: string): Date {
  const [hours = 0, minutes = 0] = at.split(':').map(Number);
  const next = new Date(now);
  next.setUTCHours(hours, minutes, 0, 0);
  if (next <= now) next.setUTCDate(next.getUTCDate() + 1);
  return next;
}

/** Which files of the folder are beyond the newest that are kept; what is not a nightly backup is never named. */
export function beyondKept(names: readonly string[], kept: number): string[] {
  return names
    .filter((name) => BACKUP.test(name))
    .sort()
    .reverse()
    .slice(kept);
}
