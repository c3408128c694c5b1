import { NOT_NEGATIVE, POSITIVE, requireInRange } from '../checks.ts';
import { type Explainable, type Explained, explained, show, stepsFor } from '../working.ts';

/**
 * Thickness of a blank between flanges.
 *
 * Source: ASME B31.3 304.5.3 (from memory). Formula: t = d·√(3·P/(16·S·E)) + c.
 * @param input.gasketInside_mm inside diameter of the gasket, or pitch of the ring for ring joints
 * @param input.allowable_MPa S at temperature
 * @param input.quality E, quality factor of the plate, up to 1
 * @param input.allowance_mm c, corrosion and mechanical allowance
 * @throws CalcRefusal `out-of-range`
 */
export function blindThickness(
  input: {
    readonly gasketInside_mm: number;
    readonly pressure_MPa: number;
    readonly allowable_MPa: number;
    readonly quality: number;
    readonly allowance_mm: number;
  } & Explainable,
): { readonly thickness_mm: number } & Explained {
  requireInRange([
    ['gasketInside_mm', input.gasketInside_mm, POSITIVE],
    ['pressure_MPa', input.pressure_MPa, POSITIVE],
    ['allowable_MPa', input.allowable_MPa, POSITIVE],
    ['quality', input.quality, { min: 0, max: 1, open: true }],
    ['allowance_mm', input.allowance_mm, NOT_NEGATIVE],
  ]);
  const { gasketInside_mm: d, pressure_MPa: P, allowable_MPa: S, quality: E, allowance_mm: c } = input;
  const thickness_mm = d * Math.sqrt((3 * P) / (16 * S * E)) + c;
  const steps = stepsFor(input);
  steps?.push({
    symbol: 't',
    meaning: 'thickness of the blank',
    formula: 'd·√(3·P/(16·S·E)) + c',
    substituted: `${show(d)} × √(3 × ${show(P)} / (16 × ${show(S)} × ${show(E)})) + ${show(c)}`,
    value: thickness_mm,
    unit: 'mm',
    source: 'ASME B31.3 304.5.3 (from memory)',
  });
  return explained({ thickness_mm }, [], steps);
}
