/** How one unit shows a quantity that the system holds in its own unit. */
export interface Unit {
  readonly symbol: string;
  /** shown = held / held-per-unit + offset */
  readonly heldPerUnit: number;
  readonly offset?: number;
  /** what a reading of this quantity is good for */
  readonly precision: { readonly significant: number } | { readonly decimals: number };
}

/** What the formatter knows. The API's unit, in which every value is handed over, stands behind the name. */
export type QuantityName =
  /** N·m */
  | 'torque'
  /** MPa, gauge */
  | 'pressure'
  /** MPa */
  | 'stress'
  /** mm */
  | 'length'
  /** mm, small and measured: gaps, flatness, elongation */
  | 'gap'
  /** N */
  | 'load'
  /** °C */
  | 'temperature'
  /** m */
  | 'distance'
  /** kg */
  | 'mass';

export type UnitKey =
  | 'N·m'
  | 'ft·lbf'
  | 'bar'
  | 'MPa'
  | 'psi'
  | 'ksi'
  | 'mm'
  | 'in'
  | 'kN'
  | 'kip'
  | '°C'
  | '°F'
  | 'm'
  | 'ft'
  | 'kg'
  | 'lb';

const inch_mm = 25.4;
// International foot, pound (exact) and standard gravity (exact, ISO 80000-3): 1 lbf = 4.4482216152605 N.
const foot_m = 0.3048;
const pound_kg = 0.45359237;
const poundForce_N = pound_kg * 9.80665;
const psi_MPa = poundForce_N / inch_mm ** 2;

const threeDigits = { significant: 3 } as const;
const whole = { decimals: 0 } as const;

/** The units of each quantity; the first is the default of SI. */
export const quantities: Readonly<Record<QuantityName, Readonly<Partial<Record<UnitKey, Unit>>>>> = {
  torque: {
    N·m: { symbol: 'N·m', heldPerUnit: 1, precision: threeDigits },
    ft·lbf: { symbol: 'ft·lbf', heldPerUnit: foot_m * poundForce_N, precision: threeDigits },
  },
  pressure: {
    bar: { symbol: 'bar', heldPerUnit: 0.1, precision: threeDigits },
    MPa: { symbol: 'MPa', heldPerUnit: 1, precision: threeDigits },
    psi: { symbol: 'psi', heldPerUnit: psi_MPa, precision: threeDigits },
  },
  stress: {
    MPa: { symbol: 'MPa', heldPerUnit: 1, precision: threeDigits },
    ksi: { symbol: 'ksi', heldPerUnit: psi_MPa * 1000, precision: threeDigits },
  },
  length: {
    mm: { symbol: 'mm', heldPerUnit: 1, precision: { decimals: 1 } },
    in: { symbol: 'in', heldPerUnit: inch_mm, precision: { decimals: 2 } },
  },
  gap: {
    mm: { symbol: 'mm', heldPerUnit: 1, precision: { decimals: 2 } },
    in: { symbol: 'in', heldPerUnit: inch_mm, precision: { decimals: 3 } },
  },
  load: {
    kN: { symbol: 'kN', heldPerUnit: 1000, precision: threeDigits },
    kip: { symbol: 'kip', heldPerUnit: poundForce_N * 1000, precision: threeDigits },
  },
  temperature: {
    '°C': { symbol: '°C', heldPerUnit: 1, precision: whole },
    '°F': { symbol: '°F', heldPerUnit: 5 / 9, offset: 32, precision: whole },
  },
  distance: {
    m: { symbol: 'm', heldPerUnit: 1, precision: threeDigits },
    ft: { symbol: 'ft', heldPerUnit: foot_m, precision: threeDigits },
  },
  mass: {
    kg: { symbol: 'kg', heldPerUnit: 1, precision: threeDigits },
    lb: { symbol: 'lb', heldPerUnit: pound_kg, precision: threeDigits },
  },
};

/** The unit system of a person, and the unit per quantity where it differs. */
export interface UnitChoice {
  readonly system: 'SI' | 'US';
  readonly units?: Partial<Record<QuantityName, UnitKey>> | undefined;
}

const usUnits: Readonly<Record<QuantityName, UnitKey>> = {
  torque: 'ft·lbf',
  pressure: 'psi',
  stress: 'ksi',
  length: 'in',
  gap: 'in',
  load: 'kip',
  temperature: '°F',
  distance: 'ft',
  mass: 'lb',
};

/**
 * The unit in which a quantity is shown to somebody.
 * @throws RangeError when the chosen unit does not measure the quantity
 */
export function unitOf(quantity: QuantityName, choice: UnitChoice): Unit {
  const known = quantities[quantity];
  const first = Object.keys(known)[0] as UnitKey;
  const key = choice.units?.[quantity] ?? (choice.system === 'US' ? usUnits[quantity] : first);
  const unit = known[key];
  if (!unit) {
    throw new RangeError(`${key} does not measure ${quantity}; choose one of ${Object.keys(known).join(', ')}.`);
  }
  return unit;
}

/** A value of the API in the unit shown. */
export function toShown(held: number, unit: Unit): number {
  return held / unit.heldPerUnit + (unit.offset ?? 0);
}

/** A value in the unit shown, as the API takes it. */
export function toHeld(shown: number, unit: Unit): number {
  return (shown - (unit.offset ?? 0)) * unit.heldPerUnit;
}
