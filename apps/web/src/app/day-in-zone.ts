/** The calendar day in a zone, so many days ahead, as the API writes it: 2027-03-09. */
export function dayInZone(timeZone: string, daysAhead: number, now: Date = new Date()): string {
  const parts = new Intl.DateTimeFormat('en-CA', { timeZone, year: 'numeric', month: '2-digit', day: '2-digit' });
  const today = parts.format(now);
  const noon = new Date(`${today}T12:00:00Z`);
  noon.setUTCDate(noon.getUTCDate() + daysAhead);
  return noon.toISOString().slice(0, 10);
}
