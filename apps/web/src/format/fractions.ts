const vulgar: Readonly<Record<string, string>> = {
  '1/2': '½',
  '1/4': '¼',
  '3/4': '¾',
  '1/8': '⅛',
  '3/8': '⅜',
  '5/8': '⅝',
  '7/8': '⅞',
};

/**
 * An inch size as the trade writes it: 1.125 → `1⅛`, 0.8125 → `13/16`, 2.5 → `2½`.
 * @param inches the size
 * @param denominator finest division, a power of two up to 64
 * @returns undefined when the size is none of these fractions: it is then shown as a decimal
 */
export function inchFraction(inches: number, denominator = 16): string | undefined {
  if (!Number.isFinite(inches) || inches < 0) return undefined;
  const parts = inches * denominator;
  const rounded = Math.round(parts);
  // A size computed from millimetres is off by the rounding of its table, at most a two-hundredth of an inch.
  if (Math.abs(parts - rounded) > denominator * 0.0005) return undefined;
  const whole = Math.floor(rounded / denominator);
  let over = rounded % denominator;
  if (over === 0) return String(whole);
  let under = denominator;
  while (over % 2 === 0) {
    over /= 2;
    under /= 2;
  }
  const sign = vulgar[`${over}/${under}`];
  if (sign !== undefined) return whole === 0 ? sign : `${whole}${sign}`;
  return whole === 0 ? `${over}/${under}` : `${whole} ${over}/${under}`;
}

/**
 * A thread's designation with its size as a fraction: `1 1/8-8 UN` and `1-1/8-8 UN` → `1⅛-8 UN`.
 * Metric threads and what it does not know stay as they are.
 */
export function threadName(thread: string): string {
  const found = /^(?:(\d+)[\s-])?(\d+)\/(\d+)(-.*)?$/.exec(thread.trim());
  if (!found) return thread;
  const [, whole = '', over = '', under = '', rest = ''] = found;
  const sign = vulgar[`${over}/${under}`];
  if (sign !== undefined) return `${whole}${sign}${rest}`;
  return `${whole === '' ? '' : `${whole} `}${over}/${under}${rest}`;
}
