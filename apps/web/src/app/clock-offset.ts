/** What one answer says of the server's clock: its Date header has whole seconds. */
export interface ClockReading {
  /** the server's clock as its Date header shows it, ms */
  readonly serverDate_ms: number;
  /** the device's clock when the request left, ms */
  readonly sentAt_ms: number;
  /** the device's clock when the answer came, ms */
  readonly receivedAt_ms: number;
}

/** The offset server − device lies between these two, ms. */
export interface OffsetBounds {
  readonly least_ms: number;
  readonly most_ms: number;
}

/**
 * Narrows the bounds of the clock's offset by one more answer: the header was written between sending and
 * receiving, and its seconds are cut off. When the bounds contradict each other a clock was set: the newest counts.
 */
export function narrowOffset(known: OffsetBounds | null, reading: ClockReading): OffsetBounds {
  const fresh = {
    least_ms: reading.serverDate_ms - reading.receivedAt_ms,
    most_ms: reading.serverDate_ms + 1000 - reading.sentAt_ms,
  };
  if (!known) return fresh;
  const least_ms = Math.max(known.least_ms, fresh.least_ms);
  const most_ms = Math.min(known.most_ms, fresh.most_ms);
  return least_ms <= most_ms ? { least_ms, most_ms } : fresh;
}

let bounds: OffsetBounds | null = null;

/** Takes note of an answer's Date header. */
export function noteServerClock(response: Response, sentAt_ms: number, receivedAt_ms: number): void {
  const serverDate_ms = Date.parse(response.headers.get('date') ?? '');
  if (Number.isNaN(serverDate_ms)) return;
  bounds = narrowOffset(bounds, { serverDate_ms, sentAt_ms, receivedAt_ms });
}

/** Server − device, ms, as last measured; 0 before the first answer. */
export function clockOffset_ms(): number {
  return bounds ? Math.round((bounds.least_ms + bounds.most_ms) / 2) : 0;
}
