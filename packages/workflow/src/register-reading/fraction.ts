/**
 * Reads a positive number written as the trade writes inches: `1 1/2`, `1-1/2`, `1.1/2`, `3/4`, `1.5`, `1,5`.
 * Returns undefined where the text is anything else, so that the caller can say what was expected.
 */
export function inchNumber(text: string): number | undefined {
  const mixed = /^(?:(\d{1,3})[ .-]+)?(\d{1,2})\s?\/\s?(2|4|8|16|32)$/.exec(text.trim());
  if (mixed) {
    const numerator = Number(mixed[2]);
    const denominator = Number(mixed[3]);
    // 11/2 is either 5.5 or a 1 1/2 whose space was lost: no proper fraction, so it is not read here.
    if (numerator === 0 || numerator >= denominator) return undefined;
    return Number(mixed[1] ?? 0) + numerator / denominator;
  }
  const decimal = /^(\d{0,4})(?:[.,](\d{1,4}))?$/.exec(text.trim());
  if (!decimal || (decimal[1] === '' && decimal[2] === undefined)) return undefined;
  const value = Number(`${decimal[1] || '0'}.${decimal[2] ?? '0'}`);
  return value > 0 ? value : undefined;
}

/** Writes inches the way the trade does, in eighths or sixteenths where they fit: 1.5 → `1 1/2`. */
export function inchText(value: number): string {
  const whole = Math.floor(value);
  const sixteenths = (value - whole) * 16;
  if (sixteenths === 0) return String(whole);
  if (!Number.isInteger(sixteenths)) return String(value);
  let numerator = sixteenths;
  let denominator = 16;
  while (numerator % 2 === 0) {
    numerator /= 2;
    denominator /= 2;
  }
  return `${whole === 0 ? '' : `${whole} `}${numerator}/${denominator}`;
}
