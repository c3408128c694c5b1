/** Conversions at the edges; inside, everything is N, mm, MPa, °C, N·m. Exact by definition unless noted. */
export const UNITS = {
  length: { mm: 1, in: 25.4, m: 1000 },
  force: { N: 1, kN: 1000, lbf: 4.4482216152605, kip: 4448.2216152605 },
  pressure: { MPa: 1, bar: 0.1, kPa: 0.001, psi: 0.006894757293168, ksi: 6.894757293168 },
  torque: { N·m: 1, lbf·ft: 1.3558179483314, lbf·in: 0.11298482902762 },
} as const;

export type Quantity = keyof typeof UNITS;
export type UnitOf<Q extends Quantity> = keyof (typeof UNITS)[Q];

/**
 * Converts a value between two units of one quantity; units of different quantities do not compile.
 * @example convert('torque', 100, 'lbf·ft', 'N·m') // 135.58
 */
export function convert<Q extends Quantity>(quantity: Q, value: number, from: UnitOf<Q>, to: UnitOf<Q>): number {
  const factors = UNITS[quantity] as Readonly<Record<string, number>>;
  return (value * (factors[String(from)] ?? Number.NaN)) / (factors[String(to)] ?? Number.NaN);
}

/** °F of °C. */
export function fahrenheitOf(celsius: number): number {
  return celsius * 1.8 + 32;
}

/** °C of °F. */
export function celsiusOf(fahrenheit: number): number {
  return (fahrenheit - 32) / 1.8;
}
