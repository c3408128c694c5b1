import type { JointState } from './joint-state.ts';

/** Corrections of the nut positions for hysteresis. */
const CORRECTIONS = 4;
const CORRECTION_SHARE = 0.8;

/** A pass that ends uniform, before grouping. */
export interface UniformPass {
  /** Tool load of each bolt of each step in order, N. */
  readonly loads: readonly (readonly number[])[];
  readonly highest: number;
  /** Largest departure from the level at the end, N. */
  readonly error: number;
}

/**
 * Tool loads that bring a joint to one level in one pass: every nut goes straight to its all-at-once position
 * and the load on arrival is read; a few corrections absorb hysteresis.
 *
 * @param start the joint before the pass; it is not changed
 * @param steps bolts from 0 in the order of the pass, each once
 * @param level_N load of every bolt at the end
 * @param scratch a state of the same model to work on
 */
export function uniformPass(
  start: JointState,
  steps: readonly (readonly number[])[],
  level_N: number,
  scratch: JointState,
): UniformPass {
  const all = Array.from({ length: start.loads.length }, (_, bolt) => bolt);
  const together = (share: number) => {
    scratch.copyFrom(start);
    scratch.tighten(
      all,
      all.map(() => level_N * share),
    );
    return Float64Array.from(scratch.takeUp);
  };
  const below = together(0.98);
  const position = together(1);
  let turn = 0;
  for (let bolt = 0; bolt < all.length; bolt++) turn += (position[bolt]! - below[bolt]!) / all.length;
  const stiffness = turn > 0 ? (0.02 * level_N) / turn : start.model.boltStiffness;
  let loads: number[][] = [];
  let error = Infinity;
  for (let correction = 0; correction <= CORRECTIONS; correction++) {
    scratch.copyFrom(start);
    loads = steps.map((bolts) => {
      scratch.place(
        bolts,
        bolts.map((bolt) => position[bolt]!),
      );
      return bolts.map((bolt) => scratch.loads[bolt]!);
    });
    error = 0;
    for (let bolt = 0; bolt < all.length; bolt++) {
      const missing = level_N - scratch.loads[bolt]!;
      error = Math.max(error, Math.abs(missing));
      if (correction < CORRECTIONS) position[bolt]! += (CORRECTION_SHARE * missing) / stiffness;
    }
    if (error < 1e-3 * level_N) break;
  }
  return { loads, highest: Math.max(...loads.flat()), error };
}
