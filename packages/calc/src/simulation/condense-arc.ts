import { small } from './station-index.ts';

/** Numbers in the record of a condensed arc: stiffness of its ends LL (6), LR (9), RR (6). */
export const STRIDE = 21;
export const LR = 6;
export const RR = 15;
/** Numbers in the record of its separator: inverse pivot (6), maps from the left and the right end (9 + 9). */
export const MAPS = 24;

/**
 * Condenses two neighbouring arcs and the springs of the station between them onto their outer ends.
 * @param left separator of the left arc
 * @param right of the right arc
 * @param station between them
 * @returns false when the pivot is not positive definite
 */
export function condenseArc(
  arcs: Float64Array,
  maps: Float64Array,
  springs: Float64Array,
  left: number,
  right: number,
  station: number,
): boolean {
  const l = STRIDE * small(left);
  const r = STRIDE * small(right);
  const o = STRIDE * small(station);
  const q = MAPS * small(station);
  const s = 3 * small(station);
  const sound = invertSymmetric(
    arcs[l + 15]! + arcs[r]! + springs[s]!,
    arcs[l + 16]! + arcs[r + 1]!,
    arcs[l + 17]! + arcs[r + 2]! + springs[s + 1]!,
    arcs[l + 18]! + arcs[r + 3]!,
    arcs[l + 19]! + arcs[r + 4]!,
    arcs[l + 20]! + arcs[r + 5]! + springs[s + 2]!,
    maps,
    q,
  );
  const i00 = maps[q + 0]!;
  const i01 = maps[q + 1]!;
  const i02 = maps[q + 2]!;
  const i11 = maps[q + 3]!;
  const i12 = maps[q + 4]!;
  const i22 = maps[q + 5]!;
  // Written out, and one end after the other: this is the innermost product of the whole simulation. Loops triple its
  // time, and more numbers at once than the processor has registers for go through memory.
  const l00 = arcs[l + 6]!;
  const l01 = arcs[l + 7]!;
  const l02 = arcs[l + 8]!;
  const l10 = arcs[l + 9]!;
  const l11 = arcs[l + 10]!;
  const l12 = arcs[l + 11]!;
  const l20 = arcs[l + 12]!;
  const l21 = arcs[l + 13]!;
  const l22 = arcs[l + 14]!;
  const a00 = i00 * l00 + i01 * l01 + i02 * l02;
  const a01 = i00 * l10 + i01 * l11 + i02 * l12;
  const a02 = i00 * l20 + i01 * l21 + i02 * l22;
  const a10 = i01 * l00 + i11 * l01 + i12 * l02;
  const a11 = i01 * l10 + i11 * l11 + i12 * l12;
  const a12 = i01 * l20 + i11 * l21 + i12 * l22;
  const a20 = i02 * l00 + i12 * l01 + i22 * l02;
  const a21 = i02 * l10 + i12 * l11 + i22 * l12;
  const a22 = i02 * l20 + i12 * l21 + i22 * l22;
  maps[q + 6] = a00;
  maps[q + 7] = a01;
  maps[q + 8] = a02;
  maps[q + 9] = a10;
  maps[q + 10] = a11;
  maps[q + 11] = a12;
  maps[q + 12] = a20;
  maps[q + 13] = a21;
  maps[q + 14] = a22;
  arcs[o + 0] = arcs[l + 0]! - (l00 * a00 + l01 * a10 + l02 * a20);
  arcs[o + 1] = arcs[l + 1]! - (l00 * a01 + l01 * a11 + l02 * a21);
  arcs[o + 2] = arcs[l + 2]! - (l00 * a02 + l01 * a12 + l02 * a22);
  arcs[o + 3] = arcs[l + 3]! - (l10 * a01 + l11 * a11 + l12 * a21);
  arcs[o + 4] = arcs[l + 4]! - (l10 * a02 + l11 * a12 + l12 * a22);
  arcs[o + 5] = arcs[l + 5]! - (l20 * a02 + l21 * a12 + l22 * a22);
  const r00 = arcs[r + 6]!;
  const r01 = arcs[r + 7]!;
  const r02 = arcs[r + 8]!;
  const r10 = arcs[r + 9]!;
  const r11 = arcs[r + 10]!;
  const r12 = arcs[r + 11]!;
  const r20 = arcs[r + 12]!;
  const r21 = arcs[r + 13]!;
  const r22 = arcs[r + 14]!;
  const b00 = i00 * r00 + i01 * r10 + i02 * r20;
  const b01 = i00 * r01 + i01 * r11 + i02 * r21;
  const b02 = i00 * r02 + i01 * r12 + i02 * r22;
  const b10 = i01 * r00 + i11 * r10 + i12 * r20;
  const b11 = i01 * r01 + i11 * r11 + i12 * r21;
  const b12 = i01 * r02 + i11 * r12 + i12 * r22;
  const b20 = i02 * r00 + i12 * r10 + i22 * r20;
  const b21 = i02 * r01 + i12 * r11 + i22 * r21;
  const b22 = i02 * r02 + i12 * r12 + i22 * r22;
  maps[q + 15] = b00;
  maps[q + 16] = b01;
  maps[q + 17] = b02;
  maps[q + 18] = b10;
  maps[q + 19] = b11;
  maps[q + 20] = b12;
  maps[q + 21] = b20;
  maps[q + 22] = b21;
  maps[q + 23] = b22;
  arcs[o + 15] = arcs[r + 15]! - (r00 * b00 + r10 * b10 + r20 * b20);
  arcs[o + 16] = arcs[r + 16]! - (r00 * b01 + r10 * b11 + r20 * b21);
  arcs[o + 17] = arcs[r + 17]! - (r00 * b02 + r10 * b12 + r20 * b22);
  arcs[o + 18] = arcs[r + 18]! - (r01 * b01 + r11 * b11 + r21 * b21);
  arcs[o + 19] = arcs[r + 19]! - (r01 * b02 + r11 * b12 + r21 * b22);
  arcs[o + 20] = arcs[r + 20]! - (r02 * b02 + r12 * b12 + r22 * b22);
  arcs[o + 6] = -(l00 * b00 + l01 * b10 + l02 * b20);
  arcs[o + 7] = -(l00 * b01 + l01 * b11 + l02 * b21);
  arcs[o + 8] = -(l00 * b02 + l01 * b12 + l02 * b22);
  arcs[o + 9] = -(l10 * b00 + l11 * b10 + l12 * b20);
  arcs[o + 10] = -(l10 * b01 + l11 * b11 + l12 * b21);
  arcs[o + 11] = -(l10 * b02 + l11 * b12 + l12 * b22);
  arcs[o + 12] = -(l20 * b00 + l21 * b10 + l22 * b20);
  arcs[o + 13] = -(l20 * b01 + l21 * b11 + l22 * b21);
  arcs[o + 14] = -(l20 * b02 + l21 * b12 + l22 * b22);
  return sound;
}

/** Inverse of a symmetric 3 × 3 matrix by LDLᵀ, packed by rows; false when it is not positive definite. */
export function invertSymmetric(
  a: number,
  b: number,
  c: number,
  d: number,
  e: number,
  f: number,
  into: Float64Array,
  at: number,
): boolean {
  // One division a pivot: they wait for each other, and each takes as long as ten products.
  const r1 = 1 / a;
  const l1 = b * r1;
  const l2 = c * r1;
  const p2 = d - l1 * b;
  const q = e - l1 * c;
  const r2 = 1 / p2;
  const l3 = q * r2;
  const p3 = f - l2 * c - l3 * q;
  const k = l1 * l3 - l2;
  const r3 = 1 / p3;
  into[at] = r1 + l1 * l1 * r2 + k * k * r3;
  into[at + 1] = -l1 * r2 - k * l3 * r3;
  into[at + 2] = k * r3;
  into[at + 3] = r2 + l3 * l3 * r3;
  into[at + 4] = -l3 * r3;
  into[at + 5] = r3;
  return a > 0 && p2 > 1e-13 * d && p3 > 1e-13 * f;
}
