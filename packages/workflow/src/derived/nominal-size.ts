/** Nominal size in mm of "NPS8" or "DN200", 25 mm to the inch (exact from NPS 4 up); null when it cannot be read. */
export function nominalSize_mm(size: string): number | null {
  const [, system, digits] = /^(NPS|DN)\s*(\d+(?:\.\d+)?)$/.exec(size) ?? [];
  if (!system || !digits) return null;
  return Number(digits) * (system === 'DN' ? 1 : 25);
}
