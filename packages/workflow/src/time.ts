const HOUR_MS = 3_600_000;

/** Milliseconds of an ISO instant. Instants carry different offsets, so they never compare as text. */
export function moment(instant: string): number {
  const milliseconds = Date.parse(instant);
  if (Number.isNaN(milliseconds)) throw new Error(`"${instant}" is no ISO 8601 instant.`);
  return milliseconds;
}

/** Hours from one instant to another; negative when the second is earlier. */
export function hoursBetween(from: string, to: string): number {
  return (moment(to) - moment(from)) / HOUR_MS;
}

export function addHours(instant: string, hours: number): string {
  return new Date(moment(instant) + hours * HOUR_MS).toISOString();
}
