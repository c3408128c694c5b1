/** The value below which a share of the sorted times lies. */
export function percentile(times: readonly number[], share: number): number {
  const sorted = [...times].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))] ?? Number.NaN;
}

export const rounded = (value: number, digits = 2): number => Number(value.toFixed(digits));

/** p50, p95 and p99 in milliseconds, and how many a second. */
export const summary = (times_ms: readonly number[], seconds: number) => ({
  p50_ms: rounded(percentile(times_ms, 0.5)),
  p95_ms: rounded(percentile(times_ms, 0.95)),
  p99_ms: rounded(percentile(times_ms, 0.99)),
  perSecond: Math.round(times_ms.length / seconds),
});

/** Runs `clients` loops side by side for some seconds; each turn's time in ms. */
export async function load(
  clients: number,
  seconds: number,
  turn: (client: number, round: number) => Promise<void>,
): Promise<{ times_ms: number[]; seconds: number }> {
  const times_ms: number[] = [];
  const begin = performance.now();
  await Promise.all(
    Array.from({ length: clients }, async (_, client) => {
      for (let round = 0; performance.now() - begin < seconds * 1000; round += 1) {
        const start = performance.now();
        await turn(client, round);
        times_ms.push(performance.now() - start);
      }
    }),
  );
  return { times_ms, seconds: (performance.now() - begin) / 1000 };
}
