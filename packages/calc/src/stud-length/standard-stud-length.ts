import { findFlange } from '../flanges/find-flange.ts';
import { flangeStandard } from '../flanges/keys.ts';
import { refuse } from '../refusal.ts';
import { areasOf } from '../threads/geometry.ts';

/** Inches of ASME B16.5 annex C. */
const FLANGE_TOLERANCE_SMALL = 0.12;
const FLANGE_TOLERANCE_LARGE = 0.19;
const GASKET = 0.12;
const FACES_LOW_CLASS = 0.12;
const FACES_HIGH_CLASS = 0.5;
const STUD_TOLERANCES: readonly (readonly [upTo_in: number, tolerance_in: number])[] = [
  [12, 0.06],
  [18, 0.12],
  [Number.POSITIVE_INFINITY, 0.25],
];
const INCH_MM = 25.4;

/**
 * Stud length of two raised-face flanges of ASME B16.5 by the rule of its annex.
 *
 * Source: ASME B16.5 annex C (from memory): L = 2·(tf + t + d) + G + F + n, nearest quarter inch; t the plus tolerance
 *   of the flange, d the nut, G the gasket, F the faces, n the minus tolerance of the stud.
 * Note: 129 of the 136 printed lengths follow; the others are printed a quarter inch longer: take the table's length
 *   where it has one.
 * @throws CalcRefusal `rule-of-b16-5-only`, and the key refusals of findFlange
 */
export function standardStudLength(input: {
  readonly standard: string;
  readonly size: string;
  readonly rating: string;
}): { readonly exactLength_in: number; readonly length_in: number; readonly length_mm: number } {
  if (flangeStandard(input.standard) !== 'ASME-B16.5') {
    refuse(
      'standard',
      'rule-of-b16-5-only',
      'The annex rule is for ASME B16.5. Compute the stud from its stack (studLength).',
    );
  }
  const flange = findFlange(input);
  const large = Number(flange.size.slice(3)) > 18;
  const diameter_in = areasOf(flange.boltThread).nominalDiameter_mm / INCH_MM;
  const flange_in = flange.thickness_mm / INCH_MM + (large ? FLANGE_TOLERANCE_LARGE : FLANGE_TOLERANCE_SMALL);
  const faces_in = Number(flange.rating) <= 300 ? FACES_LOW_CLASS : FACES_HIGH_CLASS;
  const sum_in = 2 * (flange_in + diameter_in) + GASKET + faces_in;
  const tolerance_in = STUD_TOLERANCES.find(([upTo_in, own_in]) => sum_in + own_in <= upTo_in)?.[1] ?? Number.NaN;
  const exactLength_in = sum_in + tolerance_in;
  const length_in = Math.round(exactLength_in * 4) / 4;
  return { exactLength_in, length_in, length_mm: Math.round((length_in * INCH_MM) / 5) * 5 };
}
