/** Bolts by place as ranges: 1–6, 9. */
export function placesOf(bolts: readonly number[]): string {
  const runs: [from: number, to: number][] = [];
  for (const bolt of bolts) {
    const last = runs.at(-1);
    if (last && last[1] === bolt - 1) last[1] = bolt;
    else runs.push([bolt, bolt]);
  }
  return runs.map(([from, to]) => (from === to ? String(from) : `${from}–${to}`)).join(', ');
}
