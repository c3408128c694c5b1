import { NOT_NEGATIVE, POSITIVE, requireInRange } from '../checks.ts';
import { gasketFamily } from '../gaskets/families.ts';
import { refuse } from '../refusal.ts';

export interface FaceLimits {
  readonly gasket: 'soft' | 'hard';
  /** Flatness around and across the seating surface. */
  readonly flatness_mm: number;
  /** Deepest imperfection by how far it reaches across the seating width; 0 means none is accepted. */
  readonly imperfections: readonly { readonly reachUpTo_mm: number; readonly depth_mm: number }[];
  readonly source: string;
}

const SOURCE = 'ASME PCC-1 appendix D (from memory)';
/** Depth by reach over the seating width: up to w/4, w/2, 3w/4, above. */
const DEPTHS = { hard: [0.76, 0.25, 0, 0], soft: [1.27, 0.76, 0.13, 0] } as const;
const FLATNESS = { hard: 0.15, soft: 0.25 } as const;

/**
 * Limits of flange faces: flatness, and depth of scratches and pits by their reach over the seating width.
 *
 * Source: ASME PCC-1 appendix D (from memory). Soft: compresses more than 1.0 mm at assembly.
 * @param input.seatingWidth_mm radial width that the gasket covers
 * @throws CalcRefusal `out-of-range`, `unknown-gasket-family`
 */
export function faceLimits(input: {
  readonly gasketFamily: string;
  readonly seatingWidth_mm: number;
  /** Overrides the family: compression of this gasket at assembly, mm. */
  readonly gasketCompression_mm?: number;
}): FaceLimits {
  requireInRange([
    ['seatingWidth_mm', input.seatingWidth_mm, POSITIVE],
    ['gasketCompression_mm', input.gasketCompression_mm, NOT_NEGATIVE],
  ]);
  const family = gasketFamily(input.gasketFamily);
  if (family === undefined) {
    refuse('gasketFamily', 'unknown-gasket-family', `Gasket family "${input.gasketFamily}" is unknown.`);
  }
  const compressesMuch =
    input.gasketCompression_mm === undefined ? family.compressesMuch : input.gasketCompression_mm > 1;
  const gasket = compressesMuch ? 'soft' : 'hard';
  const w = input.seatingWidth_mm;
  return {
    gasket,
    flatness_mm: FLATNESS[gasket],
    imperfections: DEPTHS[gasket].map((depth_mm, i) => ({ reachUpTo_mm: (w * (i + 1)) / 4, depth_mm })),
    source: SOURCE,
  };
}

/** Judges an imperfection: its depth against the limit for its radial reach. */
export function judgeImperfection(
  limits: FaceLimits,
  imperfection: { readonly reach_mm: number; readonly depth_mm: number },
): { readonly accepted: boolean; readonly limit_mm: number; readonly source: string } {
  requireInRange([
    ['reach_mm', imperfection.reach_mm, NOT_NEGATIVE],
    ['depth_mm', imperfection.depth_mm, NOT_NEGATIVE],
  ]);
  const band = limits.imperfections.find(({ reachUpTo_mm }) => imperfection.reach_mm <= reachUpTo_mm);
  const limit_mm = band?.depth_mm ?? 0;
  return { accepted: imperfection.depth_mm <= limit_mm, limit_mm, source: limits.source };
}
