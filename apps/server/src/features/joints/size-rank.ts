const INCH_MM = 25;

/** Orders sizes of both systems together: the nominal diameter in millimetres, NPS taken as 25 mm an inch. */
export function sizeRank(size: string): number {
  const match = /^(NPS|DN)\s*([\d.]+)$/i.exec(size);
  if (!match) return 0;
  const value = Number(match[2]);
  if (!Number.isFinite(value)) return 0;
  return match[1]?.toUpperCase() === 'NPS' ? value * INCH_MM : value;
}
