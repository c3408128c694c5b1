import { refuse } from '../refusal.ts';
import { inchesOf } from '../threads/designation.ts';

/** Flange standards of the tables. */
export const FLANGE_STANDARDS = ['ASME-B16.5', 'ASME-B16.47-A', 'ASME-B16.47-B', 'EN-1092-1'] as const;
export type FlangeStandard = (typeof FLANGE_STANDARDS)[number];

/**
 * Brings the key of a standard to the form of the API.
 * @throws CalcRefusal `unknown-standard`
 */
export function flangeStandard(text: string): FlangeStandard {
  const key = text
    .trim()
    .toUpperCase()
    .replace(/[\s_]+/g, '-')
    .replace('-SERIES-', '-');
  const found = FLANGE_STANDARDS.find((standard) => standard === key);
  if (found === undefined) {
    refuse(
      'standard',
      'unknown-standard',
      `"${text}" is not a flange standard of the tables. Use one of ${FLANGE_STANDARDS.join(', ')}, or a custom flange.`,
    );
  }
  return found;
}

/**
 * Brings a size to the form of the API: `NPS8`, `NPS1.5`, `DN200`. `NPS 1-1/2`, `1 1/2` and `8"` are read as NPS.
 * @throws CalcRefusal `unknown-size`
 */
export function flangeSize(text: string): string {
  const trimmed = text.trim().toUpperCase();
  const dn = /^DN[\s-]*(\d+)$/.exec(trimmed);
  if (dn !== null) return `DN${Number(dn[1])}`;
  const inches = inchesOf(trimmed.replace(/^NPS[\s-]*/, '').replace(/"$/, ''));
  if (inches === undefined) {
    refuse('size', 'unknown-size', `"${text}" is not a flange size. Write NPS8, NPS1.5 or DN200.`);
  }
  return `NPS${inches}`;
}

/** Brings a rating to the form of the API: `150` or `PN16`. `CL150`, `Class 150` and `PN 16` are read. */
export function flangeRating(text: string): string {
  const trimmed = text.trim().toUpperCase();
  const pn = /^PN[\s-]*(\d+)$/.exec(trimmed);
  if (pn !== null) return `PN${Number(pn[1])}`;
  const found = /^(?:CL|CLASS|#)?[\s.-]*(\d+)(?:#|LB|LBS)?$/.exec(trimmed);
  if (found === null) {
    refuse('rating', 'unknown-rating', `"${text}" is not a rating. Write 150 for a class or PN16.`);
  }
  return String(Number(found[1]));
}
