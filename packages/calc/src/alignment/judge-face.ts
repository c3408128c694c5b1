import { NOT_NEGATIVE, requireInRange } from '../checks.ts';
import { faceLimits, judgeImperfection } from './face-limits.ts';

/** A reading with its limit: what a rule, a screen and a sheet show alike. */
export interface Judgement {
  readonly what: string;
  readonly value: number;
  readonly limit: number;
  readonly unit: 'mm' | '% of target load';
  readonly accepted: boolean;
  readonly source: string;
}

/** The width that a gasket covers, and the gasket that decides how much a face may be off. */
export interface FaceReadings {
  readonly gasketFamily: string;
  /** Radial width that the gasket covers. */
  readonly seatingWidth_mm: number;
  readonly gasketCompression_mm?: number;
  readonly flatness_mm?: number;
  readonly imperfections?: readonly { readonly reach_mm: number; readonly depth_mm: number }[];
}

/**
 * Judges the measured flatness and imperfections of one face; what was not measured is not judged.
 *
 * Source: ASME PCC-1 appendix D (from memory).
 * @param input.imperfections reach across the seating width and depth of each
 * @throws CalcRefusal `out-of-range`, `unknown-gasket-family`
 * Note: a limit of 0 is the document's own: an imperfection that reaches across most of the seat is not accepted.
 */
export function judgeFace(input: FaceReadings): readonly Judgement[] {
  requireInRange([['flatness_mm', input.flatness_mm, NOT_NEGATIVE]]);
  const limits = faceLimits(input);
  const judged: Judgement[] = [];
  const add = (what: string, value: number, limit: number, accepted: boolean) =>
    judged.push({ what, value, limit, unit: 'mm', accepted, source: limits.source });
  const { flatness_mm } = input;
  if (flatness_mm !== undefined) {
    add('flatness', flatness_mm, limits.flatness_mm, flatness_mm <= limits.flatness_mm);
  }
  for (const imperfection of input.imperfections ?? []) {
    const { accepted, limit_mm } = judgeImperfection(limits, imperfection);
    add(`imperfection reaching ${imperfection.reach_mm} mm`, imperfection.depth_mm, limit_mm, accepted);
  }
  return judged;
}
