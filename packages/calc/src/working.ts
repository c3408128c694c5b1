/** One step of the working: an engineer can follow it by hand. */
export interface WorkingStep {
  readonly symbol: string;
  readonly meaning: string;
  readonly formula: string;
  /** The formula with its numbers, in plain arithmetic (× / + − ^ √ π cos ln min max). */
  readonly substituted: string;
  readonly value: number;
  readonly unit: string;
  readonly source: string;
}

/** A doubt that does not stop the calculation. */
export interface Warning {
  readonly code: string;
  readonly message: string;
}

/** What every answer carries beside its values. */
export interface Explained {
  readonly warnings: readonly Warning[];
  readonly working?: readonly WorkingStep[];
}

/** Asks a calculation for its steps. */
export interface Explainable {
  readonly working?: boolean;
}

/**
 * The list that steps are pushed to, or undefined when nobody asked.
 * Callers write `steps?.push(...)`, so that no text is built without need.
 */
export function stepsFor(input: Explainable): WorkingStep[] | undefined {
  return input.working === true ? [] : undefined;
}

/** A number as it stands in a substituted formula: seven significant digits, negative ones in brackets. */
export function show(value: number): string {
  const text = String(Number(value.toPrecision(7)));
  return value < 0 ? `(${text})` : text;
}

/** Attaches warnings and, if asked for, steps to the values of an answer. */
export function explained<T extends object>(
  values: T,
  warnings: readonly Warning[],
  steps: readonly WorkingStep[] | undefined,
): T & Explained {
  return steps === undefined ? { ...values, warnings } : { ...values, warnings, working: steps };
}
