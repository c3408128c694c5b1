const key = 'seatwell.shutdown';

/** The shutdown that this device looked at last. */
export function lastShutdownId(): string | undefined {
  try {
    return localStorage.getItem(key) ?? undefined;
  } catch {
    return undefined;
  }
}

export function rememberShutdown(shutdownId: string): void {
  try {
    localStorage.setItem(key, shutdownId);
  } catch {
    // Storage may be switched off: the shutdown is then chosen at each visit.
  }
}
