/** Decimals that show four significant digits of a value: the working is checked by hand. */
export function decimalsFor(value: number): number {
  if (value === 0 || Number.isInteger(value)) return 0;
  return Math.max(0, Math.min(6, 3 - Math.floor(Math.log10(Math.abs(value)))));
}
