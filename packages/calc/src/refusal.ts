/** One reason why a calculation was refused, addressed to the input that caused it. */
export interface RefusalItem {
  /** Path of the input, dotted, as in the request: `gasket.limits`. */
  readonly path: string;
  /** Stable code, kebab-case. */
  readonly code: string;
  /** What, the value, the limit, the remedy. */
  readonly message: string;
  readonly limit?: number | string;
}

/** A typed refusal: the input is impossible, out of a table, or data is missing. Never a crossing of limits. */
export class CalcRefusal extends Error {
  readonly code: string;
  readonly errors: readonly RefusalItem[];

  constructor(errors: readonly RefusalItem[]) {
    const first = errors[0];
    super(first === undefined ? 'Refused' : errors.map((item) => item.message).join(' '));
    this.name = 'CalcRefusal';
    this.code = first?.code ?? 'refused';
    this.errors = errors;
  }
}

/**
 * Refuses with a single item.
 * @throws CalcRefusal always
 */
export function refuse(path: string, code: string, message: string, limit?: number | string): never {
  throw new CalcRefusal([limit === undefined ? { path, code, message } : { path, code, message, limit }]);
}
