import type { Warning } from '../working.ts';
import { checkJoint } from './check-joint.ts';
import { jointModel } from './joint-model.ts';
import { JointState } from './joint-state.ts';
import { clockwiseRound, type SolverStep, solverSteps, type TighteningPass } from './sequence-steps.ts';
import { type LoadStatistics, loadStatistics, parallelism, runPasses, type SimulationRequest } from './simulate.ts';
import { aboveLimit, FOUR_BOLTS } from './texts.ts';

/** Rounds after which the search for a uniform joint stops. */
export const MOST_EXTRA_ROUNDS = 12;

/** Limit on every bolt where none is given: ±10 % of target (common practice). */
export const USUAL_LIMIT_PERCENT = 10;

/** Extra rounds at full load that a sequence needs. */
export interface PassesNeeded {
  /** Extra rounds until every bolt is within the limit; undefined where none suffice or none are given. */
  readonly extraRounds: number | undefined;
  /** Loads after the sequence and those rounds. */
  readonly final: LoadStatistics;
  readonly moves: number;
  readonly settings: number;
  readonly parallelism_mm: number;
  readonly largestParallelism_mm: number;
  readonly gasketPeak_MPa: number;
  readonly warnings: readonly Warning[];
}

/** Whether every load is within a limit of the target. */
export function withinLimit(loads: LoadStatistics, limit_percent: number): boolean {
  return loads.min >= 100 - limit_percent && loads.max <= 100 + limit_percent;
}

const movesOf = (steps: readonly SolverStep[]) => steps.reduce((sum, step) => sum + step.bolts.length, 0);

/**
 * Adds rounds at 100 % to a sequence until every bolt is within a limit of the target.
 *
 * @param request joint, target and passes as for `simulateTightening`
 * @param limit_percent 10 for ±10 %
 * @param round the round that is repeated; clockwise, one bolt at a time, where not given
 * @returns no number of rounds for joints of four bolts, nor where rounds do not help
 * @throws CalcRefusal as `simulateTightening`
 */
export function passesNeeded(
  request: SimulationRequest,
  limit_percent: number,
  round: TighteningPass = { steps: clockwiseRound(request.joint.boltCount) },
): PassesNeeded {
  checkJoint(request.joint);
  const { joint, target_N, creep_mm3_per_N = 0, choices } = request;
  const passes = solverSteps(request.passes, joint.boltCount);
  const extra = solverSteps([round], joint.boltCount);
  const state = new JointState(jointModel(joint, choices), target_N);
  let largest = 0;
  const watch = () => {
    largest = Math.max(largest, parallelism(state));
  };
  runPasses(state, passes, target_N, creep_mm3_per_N, watch);
  let final = loadStatistics(state.loads, target_N);
  let rounds = 0;
  let before = Infinity;
  // A round that changes nothing ends the search: the bolts outside are too high and stay so.
  while (!withinLimit(final, limit_percent) && rounds < MOST_EXTRA_ROUNDS) {
    const distance = final.sd + Math.abs(final.mean - 100) + Math.max(0, 100 - final.min);
    if (Math.abs(before - distance) < 0.01) break;
    before = distance;
    runPasses(state, extra, target_N, 0, watch);
    final = loadStatistics(state.loads, target_N);
    rounds++;
  }
  const met = withinLimit(final, limit_percent);
  const warnings: Warning[] = [];
  if (joint.boltCount === 4) warnings.push(FOUR_BOLTS);
  else if (!met && final.max > 100 + limit_percent) warnings.push(aboveLimit(final.max, limit_percent));
  return {
    extraRounds: met && joint.boltCount > 4 ? rounds : undefined,
    final,
    moves: movesOf(passes.flat()) + rounds * movesOf(extra.flat()),
    settings: passes.flat().length + rounds * extra.flat().length,
    parallelism_mm: parallelism(state),
    largestParallelism_mm: largest,
    gasketPeak_MPa: state.highestStress,
    warnings,
  };
}
