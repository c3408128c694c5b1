/**
 * Whole days by which a pack's test is late: its planned day has gone by at the site and it is not proven.
 * @param plannedOn planned day, `2027-03-09`, or null where none is planned
 * @param today the site's calendar day
 * @returns 0 where it is not late
 */
export function daysLate(plannedOn: string | null, proven: boolean, today: string): number {
  if (plannedOn === null || proven) return 0;
  return Math.max(0, Math.round((Date.parse(today) - Date.parse(plannedOn)) / 86_400_000));
}
