import type { Payload } from '@seatwell/contract';

type Face = Payload<'faces-inspected'>['faces'][number];

/** Gaskets that compress more than 1.0 mm at assembly take up more of an uneven face. */
const SOFT_FAMILIES: readonly string[] = ['spiral-wound', 'eptfe-sheet', 'graphite-sheet', 'elastomer'];

const FLATNESS_MM = { hard: 0.15, soft: 0.25 } as const;

/** Deepest imperfection by its reach across the seating width w: up to w/4, w/2, 3w/4, above. */
const DEPTH_MM = { hard: [0.76, 0.25, 0, 0], soft: [1.27, 0.76, 0.13, 0] } as const;

export const FACE_LIMITS_SOURCE = 'ASME PCC-1, appendix D (from memory)';

const kindOf = (gasketFamily: string): 'hard' | 'soft' => (SOFT_FAMILIES.includes(gasketFamily) ? 'soft' : 'hard');

/** Flatness around and across a face that the gasket takes up, mm. ASME PCC-1 appendix D (from memory). */
export const flatnessLimit_mm = (gasketFamily: string): number => FLATNESS_MM[kindOf(gasketFamily)];

/** What is measured of an imperfection: how deep it is, and how far it reaches across the seating width. */
export interface Imperfection {
  readonly depth_mm: number;
  readonly reach_mm: number;
}

/** The imperfection that was measured on a face; null where there is none or it was only looked at. */
export const imperfectionOf = ({ imperfectionDepth_mm, imperfectionExtent_mm }: Face): Imperfection | null =>
  imperfectionDepth_mm === null || imperfectionDepth_mm === 0 || imperfectionExtent_mm === null
    ? null
    : { depth_mm: imperfectionDepth_mm, reach_mm: imperfectionExtent_mm };

/**
 * The depth that an imperfection may have by its reach, mm. ASME PCC-1 appendix D (from memory).
 * @param seatingWidth_mm radial width that the gasket covers, above 0
 */
export function imperfectionLimit_mm(gasketFamily: string, seatingWidth_mm: number, reach_mm: number): number {
  const depths = DEPTH_MM[kindOf(gasketFamily)];
  const quarter = depths.findIndex((_, index) => reach_mm <= (seatingWidth_mm * (index + 1)) / 4);
  return depths[quarter] ?? 0;
}
