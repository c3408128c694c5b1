import { POSITIVE, requireInRange } from '../checks.ts';
import { areasOf } from '../threads/geometry.ts';
import { type Explainable, type Explained, explained, show, stepsFor } from '../working.ts';

/** Share of thread friction in the torsion of the bolt: 2/√3, from 1/cos 30°. */
const FLANK_FACTOR = 1.155;
/** Torsion with the section plastic across (VDI 2230); elastic would be 2. */
const PLASTIC_TORSION = 1.5;

/**
 * Torsion factor 1.5·(d2/d0)·(P/(π·d2) + 1.155·µ): shear stress over tension stress on the section d0.
 *
 * Source: VDI 2230, plastic torsion.
 * @param thread designation
 * @param threadFriction µ in the thread, 0 to 1
 */
export function torsionRatio(thread: string, threadFriction: number): number {
  const { pitch_mm, pitchDiameter_mm, minorDiameter_mm } = areasOf(thread);
  const d0_mm = (pitchDiameter_mm + minorDiameter_mm) / 2;
  return (
    PLASTIC_TORSION *
    (pitchDiameter_mm / d0_mm) *
    (pitch_mm / (Math.PI * pitchDiameter_mm) + FLANK_FACTOR * threadFriction)
  );
}

/**
 * Equivalent stress over tension stress while the nut is turned: √(1 + 3·τ²/σ²).
 *
 * Source: VDI 2230 (von Mises).
 */
export function torsionFactor(thread: string, threadFriction: number): number {
  return Math.sqrt(1 + 3 * torsionRatio(thread, threadFriction) ** 2);
}

/**
 * Assembly preload at a share of yield under tension and torsion together.
 *
 * Source: VDI 2230.
 * Formula: F = A0·ν·Rp0.2/√(1 + 3·[1.5·(d2/d0)·(P/(π·d2) + 1.155·µ)]²), d0 = (d2 + d3)/2.
 * @param input.yield_MPa minimum yield, MPa
 * @param input.utilisation ν, share of yield, 0 to 1
 * @param input.threadFriction µ in the thread, 0 to 0.5
 * @throws CalcRefusal `unknown-thread`, `out-of-range`
 * @example assemblyLoad({ thread: 'M12', yield_MPa: 640, utilisation: 0.9, threadFriction: 0.12 }).load_N // 41 900
 */
export function assemblyLoad(
  input: {
    readonly thread: string;
    readonly yield_MPa: number;
    readonly utilisation: number;
    readonly threadFriction: number;
  } & Explainable,
): { readonly load_N: number } & Explained {
  requireInRange([
    ['yield_MPa', input.yield_MPa, POSITIVE],
    ['utilisation', input.utilisation, { min: 0, max: 1, open: true }],
    ['threadFriction', input.threadFriction, { min: 0, max: 0.5 }],
  ]);
  const { pitchDiameter_mm, minorDiameter_mm, pitch_mm } = areasOf(input.thread);
  const d0_mm = (pitchDiameter_mm + minorDiameter_mm) / 2;
  const area_mm2 = (Math.PI / 4) * d0_mm ** 2;
  const ratio = torsionRatio(input.thread, input.threadFriction);
  const load_N = (area_mm2 * input.utilisation * input.yield_MPa) / Math.sqrt(1 + 3 * ratio ** 2);
  const steps = stepsFor(input);
  steps?.push(
    {
      symbol: 'A0',
      meaning: 'area of the section d0',
      formula: 'π/4·((d2 + d3)/2)²',
      substituted: `π / 4 × ((${show(pitchDiameter_mm)} + ${show(minorDiameter_mm)}) / 2)^2`,
      value: area_mm2,
      unit: 'mm²',
      source: 'VDI 2230',
    },
    {
      symbol: 'τ/σ',
      meaning: 'torsion over tension',
      formula: '1.5·(d2/d0)·(P/(π·d2) + 1.155·µ)',
      substituted: `${PLASTIC_TORSION} × ${show(pitchDiameter_mm)} / ${show(d0_mm)} × (${show(pitch_mm)} / (π × ${show(pitchDiameter_mm)}) + ${FLANK_FACTOR} × ${show(input.threadFriction)})`,
      value: ratio,
      unit: '',
      source: 'VDI 2230',
    },
    {
      symbol: 'F',
      meaning: 'assembly preload',
      formula: 'A0·ν·Rp0.2/√(1 + 3·(τ/σ)²)',
      substituted: `${show(area_mm2)} × ${show(input.utilisation)} × ${show(input.yield_MPa)} / √(1 + 3 × ${show(ratio)}^2)`,
      value: load_N,
      unit: 'N',
      source: 'VDI 2230',
    },
  );
  return explained({ load_N }, [], steps);
}
