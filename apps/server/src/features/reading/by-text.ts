/** Orders by code units: the same on every server, whatever the locale of its database. */
export const byText =
  <T>(...keys: readonly ((row: T) => string | null)[]) =>
  (a: T, b: T): number => {
    for (const key of keys) {
      const [left, right] = [key(a) ?? '', key(b) ?? ''];
      if (left !== right) return left < right ? -1 : 1;
    }
    return 0;
  };
