const MINUTES_OF_DOUBT = 5;

/**
 * When the work was done: the device's time put right by its measured offset, never later than its arrival.
 * A clock that then still runs ahead by more than five minutes cannot be trusted, and the fact needs review.
 */
export function workTime(deviceTime: string, clockOffset_ms: number, now: string): { at: string; doubtful: boolean } {
  const measured = Date.parse(deviceTime) + clockOffset_ms;
  const arrival = Date.parse(now);
  return {
    at: new Date(Math.min(measured, arrival)).toISOString(),
    doubtful: measured - arrival > MINUTES_OF_DOUBT * 60_000,
  };
}
