import { CalcRefusal, type RefusalItem, refuse } from './refusal.ts';

/** What a number must satisfy; bounds are included unless `open`. */
export interface Range {
  readonly min?: number;
  readonly max?: number;
  /** The lower bound itself is refused. */
  readonly open?: boolean;
}

function problem(path: string, value: number, range: Range): RefusalItem | undefined {
  if (!Number.isFinite(value)) {
    return {
      path,
      code: 'not-a-number',
      message: `${path} must be a finite number; it is ${value}.`,
    };
  }
  const { min, max } = range;
  if (min !== undefined && (value < min || (range.open === true && value === min))) {
    const word = range.open === true ? 'more than' : 'at least';
    return {
      path,
      code: 'out-of-range',
      message: `${path} is ${value}; it must be ${word} ${min}. Check the value and its unit.`,
      limit: min,
    };
  }
  if (max !== undefined && value > max) {
    return {
      path,
      code: 'out-of-range',
      message: `${path} is ${value}; it must be at most ${max}. Check the value and its unit.`,
      limit: max,
    };
  }
  return undefined;
}

/**
 * Checks several numbers and refuses with all the failures at once; absent optional values are skipped.
 * @throws CalcRefusal with code `not-a-number` or `out-of-range` for each bad value
 */
export function requireInRange(checks: readonly (readonly [string, number | undefined, Range])[]): void {
  let errors: RefusalItem[] | undefined;
  for (const [path, value, range] of checks) {
    if (value === undefined) continue;
    const item = problem(path, value, range);
    if (item !== undefined) {
      errors ??= [];
      errors.push(item);
    }
  }
  if (errors !== undefined) throw new CalcRefusal(errors);
}

/** More than zero. */
export const POSITIVE: Range = { min: 0, open: true };
/** Zero or more. */
export const NOT_NEGATIVE: Range = { min: 0 };

/**
 * Guards a result: a calculation never answers NaN or infinity.
 * @throws CalcRefusal with code `no-result`
 */
export function finite(name: string, value: number): number {
  if (!Number.isFinite(value)) {
    refuse(name, 'no-result', `${name} has no finite value for these inputs. Check that the geometry is possible.`);
  }
  return value;
}
