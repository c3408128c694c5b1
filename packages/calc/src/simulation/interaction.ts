import { checkJoint } from './check-joint.ts';
import { jointModel, type SimulationJoint } from './joint-model.ts';
import { JointState } from './joint-state.ts';

/** How much tightening one bolt unloads the others. */
export interface Interaction {
  /** Change of each other bolt over the change of the tightened one, clockwise from it. */
  readonly influence: readonly number[];
  /** Interaction number S: minus the sum of the influences. */
  readonly interaction: number;
  /** Share of the mean shortfall left by each clockwise pass: (S/2)/(1 − S/2). */
  readonly shortfallLeft: number;
}

/**
 * Interaction number of a joint at its target, all other nuts standing still.
 *
 * A closed-form estimate of the passes needed follows from it, within about 8 % of the simulation for
 * spiral-wound joints of 12 bolts and more; it is unreliable for 8 bolts.
 * @param target_N load of every bolt, N
 * @throws CalcRefusal as `checkJoint`; `simulation-not-converged`
 */
export function interactionOf(joint: SimulationJoint, target_N: number): Interaction {
  checkJoint(joint);
  const state = new JointState(jointModel(joint), target_N);
  const all = Array.from({ length: joint.boltCount }, (_, bolt) => bolt);
  state.tighten(
    all,
    all.map(() => target_N),
  );
  state.correct();
  const before = Float64Array.from(state.loads);
  state.tighten([0], [before[0]! * 1.001]);
  const rise = state.loads[0]! - before[0]!;
  const influence = all.slice(1).map((bolt) => (state.loads[bolt]! - before[bolt]!) / rise);
  const interaction = -influence.reduce((sum, value) => sum + value, 0);
  return { influence, interaction, shortfallLeft: interaction / 2 / (1 - interaction / 2) };
}

/**
 * Clockwise passes that bring the mean shortfall from one value to another, by the interaction number.
 * @param from_percent mean shortfall now, percent of target
 * @param to_percent mean shortfall wanted
 */
export function estimatedPasses(interaction: Interaction, from_percent: number, to_percent: number): number {
  if (from_percent <= to_percent) return 0;
  const left = interaction.shortfallLeft;
  if (!(left > 0)) return 1;
  if (left >= 1) return Infinity;
  return Math.max(1, Math.ceil(Math.log(to_percent / from_percent) / Math.log(left)));
}
