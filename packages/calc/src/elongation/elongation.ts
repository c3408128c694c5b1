import { NOT_NEGATIVE, POSITIVE, requireInRange } from '../checks.ts';
import { refuse } from '../refusal.ts';
import { areasOf } from '../threads/geometry.ts';
import { type Explainable, type Explained, explained, show, stepsFor } from '../working.ts';

export interface ElongationRequest extends Explainable {
  readonly thread: string;
  readonly load_N: number;
  /** Mid-nut to mid-nut. */
  readonly effectiveLength_mm: number;
  readonly elasticModulus_MPa: number;
  /** Area of the elastic length that has thread; tensile unless root is asked for. */
  readonly area?: 'tensile' | 'root';
  /** Part of the effective length that is plain shank. */
  readonly shankLength_mm?: number;
  /** Diameter of the shank; nominal if not given. */
  readonly shankDiameter_mm?: number;
}

function check(input: ElongationRequest): void {
  requireInRange([
    ['load_N', input.load_N, NOT_NEGATIVE],
    ['effectiveLength_mm', input.effectiveLength_mm, POSITIVE],
    ['elasticModulus_MPa', input.elasticModulus_MPa, { min: 1000, max: 500_000 }],
    ['shankLength_mm', input.shankLength_mm, NOT_NEGATIVE],
    ['shankDiameter_mm', input.shankDiameter_mm, POSITIVE],
  ]);
  if (input.shankLength_mm !== undefined && input.shankLength_mm > input.effectiveLength_mm) {
    refuse(
      'shankLength_mm',
      'shank-longer-than-bolt',
      `The shank of ${input.shankLength_mm} mm is longer than the effective length ${input.effectiveLength_mm} mm.`,
      input.effectiveLength_mm,
    );
  }
}

/**
 * Elongation of a bolt under load.
 *
 * Source: ASME PCC-1 (elongation); Hooke, thread and shank in series.
 * Formula: ΔL = F/E·(L_thread/A_thread + L_shank/A_shank); without a shank ΔL = F·Leff/(E·A).
 * @param input.effectiveLength_mm mid-nut to mid-nut
 * @throws CalcRefusal `unknown-thread`, `out-of-range`, `shank-longer-than-bolt`
 * @example elongation({ thread: '7/8-9 UNC', load_N: 44482, effectiveLength_mm: 127, elasticModulus_MPa: 206843 })
 */
export function elongation(input: ElongationRequest): { readonly elongation_mm: number } & Explained {
  check(input);
  const { nominalDiameter_mm, tensileStressArea_mm2, rootArea_mm2 } = areasOf(input.thread);
  const threadArea_mm2 = input.area === 'root' ? rootArea_mm2 : tensileStressArea_mm2;
  const shank_mm = input.shankLength_mm ?? 0;
  const shankDiameter_mm = input.shankDiameter_mm ?? nominalDiameter_mm;
  const shankArea_mm2 = (Math.PI / 4) * shankDiameter_mm ** 2;
  const thread_mm = input.effectiveLength_mm - shank_mm;
  const elongation_mm =
    (input.load_N / input.elasticModulus_MPa) * (thread_mm / threadArea_mm2 + shank_mm / shankArea_mm2);
  const steps = stepsFor(input);
  steps?.push({
    symbol: 'ΔL',
    meaning: 'elongation',
    formula: 'F/E·(Lt/At + Ls/As)',
    substituted: `${show(input.load_N)} / ${show(input.elasticModulus_MPa)} × (${show(thread_mm)} / ${show(threadArea_mm2)} + ${show(shank_mm)} / ${show(shankArea_mm2)})`,
    value: elongation_mm,
    unit: 'mm',
    source: 'ASME PCC-1; Hooke',
  });
  return explained({ elongation_mm }, [], steps);
}

/** Load that a measured elongation shows: the inverse of elongation. */
export function loadFromElongation(input: Omit<ElongationRequest, 'load_N'> & { readonly elongation_mm: number }): {
  readonly load_N: number;
} {
  requireInRange([['elongation_mm', input.elongation_mm, NOT_NEGATIVE]]);
  const perNewton = elongation({ ...input, load_N: 1, working: false }).elongation_mm;
  return { load_N: input.elongation_mm / perNewton };
}

/**
 * Turn of nut beyond snug that gives an elongation and a compression of the parts.
 *
 * Source: geometry; one turn advances the nut by one pitch.
 * @param input.jointCompression_mm give of gasket and flanges, which takes most of the turn in a soft joint
 */
export function turnOfNut(input: {
  readonly thread: string;
  readonly elongation_mm: number;
  readonly jointCompression_mm: number;
}): { readonly turn_deg: number } {
  requireInRange([
    ['elongation_mm', input.elongation_mm, NOT_NEGATIVE],
    ['jointCompression_mm', input.jointCompression_mm, NOT_NEGATIVE],
  ]);
  const { pitch_mm } = areasOf(input.thread);
  return { turn_deg: (360 * (input.elongation_mm + input.jointCompression_mm)) / pitch_mm };
}
