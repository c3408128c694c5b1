/** Factors of the tapered hub, ASME BPVC VIII-1 Appendix 2 Table 2-7.1 (equations, from memory of the table). */
export interface HubFactors {
  readonly F: number;
  readonly V: number;
  readonly f: number;
}

/** Poisson ratio 0.3: 12·(1 − ν²)·4 and 12·(1 − ν²)/4 of the shell equations. */
const C_FACTOR = 43.68;
const SHELL_FACTOR = 2.73;

/** det [[a, b, c], [d, e, g], [h, k, l]], the way the table writes its constants out. */
function determinant(
  [a, b, c]: readonly [number, number, number],
  [d, e, g]: readonly [number, number, number],
  [h, k, l]: readonly [number, number, number],
): number {
  return a * (e * l - g * k) - b * (d * l - g * h) + c * (d * k - e * h);
}

function hubConstants(A: number, C: number) {
  const c1 = 1 / 3 + A / 12;
  const c2 = 5 / 42 + (17 * A) / 336;
  const c3 = 1 / 210 + A / 360;
  const c4 = 11 / 360 + (59 * A) / 5040 + (1 + 3 * A) / C;
  const c5 = 1 / 90 + (5 * A) / 1008 - (1 + A) ** 3 / C;
  const c6 = 1 / 120 + (17 * A) / 5040 + 1 / C;
  const c7 = 215 / 2772 + (51 * A) / 1232 + (60 / 7 + (225 * A) / 14 + (75 * A ** 2) / 7 + (5 * A ** 3) / 2) / C;
  const c8 = 31 / 6930 + (128 * A) / 45045 + (6 / 7 + (15 * A) / 7 + (12 * A ** 2) / 7 + (5 * A ** 3) / 11) / C;
  const c9 = 533 / 30240 + (653 * A) / 73920 + (1 / 2 + (33 * A) / 14 + (39 * A ** 2) / 28 + (25 * A ** 3) / 84) / C;
  const c10 = 29 / 3780 + (3 * A) / 704 - (1 / 2 + (33 * A) / 14 + (81 * A ** 2) / 28 + (13 * A ** 3) / 12) / C;
  const c11 = 31 / 6048 + (1763 * A) / 665280 + (1 / 2 + (6 * A) / 7 + (15 * A ** 2) / 28 + (5 * A ** 3) / 42) / C;
  const c12 = 1 / 2925 + (71 * A) / 300300 + (8 / 35 + (18 * A) / 35 + (156 * A ** 2) / 385 + (6 * A ** 3) / 55) / C;
  const c13 = 761 / 831600 + (937 * A) / 1663200 + (1 / 35 + (6 * A) / 35 + (11 * A ** 2) / 70 + (3 * A ** 3) / 70) / C;
  const c14 = 197 / 415800 + (103 * A) / 332640 - (1 / 35 + (6 * A) / 35 + (17 * A ** 2) / 70 + A ** 3 / 10) / C;
  const c15 = 233 / 831600 + (97 * A) / 554400 + (1 / 35 + (3 * A) / 35 + A ** 2 / 14 + (2 * A ** 3) / 105) / C;
  // C16 to C25 are Cramer's rule on one symmetric system with three right-hand sides.
  const c16 = determinant([c1, c2, c3], [c2, c7, c8], [c3, c8, c12]);
  const solve = (r1: number, r2: number, r3: number) =>
    [
      determinant([r1, c2, c3], [r2, c7, c8], [r3, c8, c12]) / c16,
      determinant([c1, r1, c3], [c2, r2, c8], [c3, r3, c12]) / c16,
      determinant([c1, c2, r1], [c2, c7, r2], [c3, c8, r3]) / c16,
    ] as const;
  const [c17, c20, c23] = solve(c4, c9, c13);
  const [c18, c21, c24] = solve(c5, c10, c14);
  const [c19, c22, c25] = solve(c6, c11, c15);
  return { c17, c18, c19, c20, c21, c22, c23, c24, c25 };
}

/** Factors common to both: F's and V's denominators. */
const denominatorF = (A: number, C: number) => ((C / SHELL_FACTOR) ** 0.25 * (1 + A) ** 3) / C;
const denominatorV = (A: number, C: number) => (SHELL_FACTOR / C) ** 0.25 * (1 + A) ** 3;

/**
 * F, V and f of an integral flange with a tapered hub.
 * @param thicknessRatio g1/g0, 1 or more
 * @param lengthRatio h/h0 with h0 = √(B·g0), more than 0
 */
export function integralHubFactors(thicknessRatio: number, lengthRatio: number): HubFactors {
  const A = thicknessRatio - 1;
  const C = C_FACTOR * lengthRatio ** 4;
  const { c17, c18, c19, c20, c21, c22, c23, c24, c25 } = hubConstants(A, C);
  const c26 = -((C / 4) ** 0.25);
  const c27 = c20 - c17 - 5 / 12 + c17 * c26;
  const c28 = c22 - c19 - 1 / 12 + c19 * c26;
  const c29 = -((C / 4) ** 0.5);
  const c30 = -((C / 4) ** 0.75);
  const c31 = (3 * A) / 2 - c17 * c30;
  const c32 = 1 / 2 - c19 * c30;
  const c33 = 0.5 * c26 * c32 + c28 * c31 * c29 - (0.5 * c30 * c28 + c32 * c27 * c29);
  const c34 = 1 / 12 + c18 - c21 - c18 * c26;
  const c35 = c18 * c30;
  const c36 = (c28 * c35 * c29 - c32 * c34 * c29) / c33;
  const c37 = (0.5 * c26 * c35 + c34 * c31 * c29 - (0.5 * c30 * c34 + c35 * c27 * c29)) / c33;
  const e1 = c17 * c36 + c18 + c19 * c37;
  const e2 = c20 * c36 + c21 + c22 * c37;
  const e3 = c23 * c36 + c24 + c25 * c37;
  const e4 = 1 / 4 + c37 / 12 + c36 / 4 - e3 / 5 - (3 * e2) / 2 - e1;
  const e5 = e1 * (1 / 2 + A / 6) + e2 * (1 / 4 + (11 * A) / 84) + e3 * (1 / 70 + A / 105);
  const e6 = e5 - c36 * (7 / 120 + A / 36 + (3 * A) / C) - 1 / 40 - A / 72 - c37 * (1 / 60 + A / 120 + 1 / C);
  return {
    F: -e6 / denominatorF(A, C),
    V: e4 / denominatorV(A, C),
    // The largest hub stress is never below that at the small end.
    f: Math.max(1, c36 / (1 + A)),
  };
}

/** FL and VL of a loose flange with a hub; f is 1. */
export function looseHubFactors(thicknessRatio: number, lengthRatio: number): HubFactors {
  const A = thicknessRatio - 1;
  const C = C_FACTOR * lengthRatio ** 4;
  const { c18, c21, c24 } = hubConstants(A, C);
  const numeratorF =
    c18 * (1 / 2 + A / 6) + c21 * (1 / 4 + (11 * A) / 84) + c24 * (1 / 70 + A / 105) - (1 / 40 + A / 72);
  return {
    F: -numeratorF / denominatorF(A, C),
    V: (1 / 4 - c24 / 5 - (3 * c21) / 2 - c18) / denominatorV(A, C),
    f: 1,
  };
}
