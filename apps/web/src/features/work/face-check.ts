import { type FaceLimits, faceLimits, judgeImperfection } from '@seatwell/calc';
import type { GasketSpecification, Payload } from '@seatwell/contract';

export type FaceReading = Payload<'faces-inspected'>['faces'][number];

/** A face as the form holds it: nothing is accepted, and no condition is given, until somebody says so. */
export interface FaceForm {
  readonly condition: FaceReading['condition'] | '';
  readonly accepted: 'yes' | 'no' | '';
  readonly flatness_mm: number | null;
  readonly depth_mm: number | null;
  readonly extent_mm: number | null;
  readonly grooveTouched: boolean;
  readonly photo: string | null;
}

export const blankFace: FaceForm = {
  condition: '',
  accepted: '',
  flatness_mm: null,
  depth_mm: null,
  extent_mm: null,
  grooveTouched: false,
  photo: null,
};

/** Limits of the faces under a gasket; null where the family has none, width null where the register lacks it. */
export function limitsFor(gasket: GasketSpecification): { limits: FaceLimits; width_mm: number | null } | null {
  const { contactInside_mm: inside, contactOutside_mm: outside } = gasket;
  const width_mm = inside !== null && outside !== null && outside > inside ? (outside - inside) / 2 : null;
  try {
    // Flatness does not depend on the width: without it, only the imperfections have no limit to show.
    return { limits: faceLimits({ gasketFamily: gasket.family, seatingWidth_mm: width_mm ?? 10 }), width_mm };
  } catch {
    return null;
  }
}

/** The deepest imperfection for its extent over the seating width; null where it cannot be said. */
export function depthLimit(found: ReturnType<typeof limitsFor>, face: FaceForm): number | null {
  if (!found || found.width_mm === null || face.extent_mm === null) return null;
  return judgeImperfection(found.limits, { reach_mm: face.extent_mm, depth_mm: face.depth_mm ?? 0 }).limit_mm;
}

export function isOverLimit(found: ReturnType<typeof limitsFor>, face: FaceForm): boolean {
  if (!found) return false;
  const depth = depthLimit(found, face);
  const flatnessOver = face.flatness_mm !== null && face.flatness_mm > found.limits.flatness_mm;
  return flatnessOver || (depth !== null && face.depth_mm !== null && face.depth_mm > depth);
}

export interface FaceDemands {
  readonly measured: boolean;
  readonly groove: boolean;
}

export type FaceLack = 'condition' | 'decision' | 'flatness' | 'imperfection' | 'groove';

/** What a face still lacks before it can be recorded; null when nothing. */
export function faceLack(face: FaceForm, demands: FaceDemands): FaceLack | null {
  if (face.condition === '') return 'condition';
  if (face.accepted === '') return 'decision';
  if (face.accepted === 'no') return null;
  if (demands.measured && face.flatness_mm === null) return 'flatness';
  const marked = face.condition !== 'clean';
  if (demands.measured && marked && (face.depth_mm === null || face.extent_mm === null)) return 'imperfection';
  if (demands.groove && !face.grooveTouched) return 'groove';
  return null;
}

export function toReading(face: FaceForm, number: number, demands: FaceDemands): FaceReading {
  return {
    face: number,
    condition: face.condition === '' ? 'damaged' : face.condition,
    flatness_mm: face.flatness_mm,
    imperfectionDepth_mm: face.depth_mm,
    imperfectionExtent_mm: face.extent_mm,
    ringGrooveTouched: demands.groove ? face.grooveTouched : null,
    accepted: face.accepted === 'yes',
    photo: face.photo,
  };
}
