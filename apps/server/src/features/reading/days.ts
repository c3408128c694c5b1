/** The calendar day of a date column as Prisma reads it. */
export const dayText = (date: Date): string => date.toISOString().slice(0, 10);

export const maybeDay = (date: Date | null): string | null => (date ? dayText(date) : null);

export const maybeInstant = (date: Date | null): string | null => date?.toISOString() ?? null;

/** The day so many days after another. */
export const daysAfter = (day: string, days: number): string => {
  const date = new Date(`${day}T00:00:00Z`);
  date.setUTCDate(date.getUTCDate() + days);
  return date.toISOString().slice(0, 10);
};

/** Days from one to another, counting neither; negative when the second is earlier. */
export const daysBetween = (from: string, to: string): number =>
  Math.round((Date.parse(`${to}T00:00:00Z`) - Date.parse(`${from}T00:00:00Z`)) / 86_400_000);

/** What lapses within this many days is shown as lapsing. */
export const LAPSING_DAYS = 7;
