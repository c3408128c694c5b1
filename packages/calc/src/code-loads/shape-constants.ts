/**
 * T, U, Y and Z of the flange ring.
 *
 * Source: ASME BPVC VIII-1 Appendix 2, Fig. 2-7.1 (equations, Poisson ratio 0.3).
 * @param K outside over inside diameter, above 1
 */
export function shapeConstants(K: number): {
  readonly T: number;
  readonly U: number;
  readonly Y: number;
  readonly Z: number;
} {
  const log = Math.log10(K);
  const bent = K ** 2 * (1 + 8.55246 * log) - 1;
  return {
    T: bent / ((1.0472 + 1.9448 * K ** 2) * (K - 1)),
    U: bent / (1.36136 * (K ** 2 - 1) * (K - 1)),
    Y: (0.66845 + (5.7169 * K ** 2 * log) / (K ** 2 - 1)) / (K - 1),
    Z: (K ** 2 + 1) / (K ** 2 - 1),
  };
}
