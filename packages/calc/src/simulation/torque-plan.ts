import { refuse } from '../refusal.ts';
import type { TargetAnswer } from '../target/request.ts';
import type { Warning } from '../working.ts';
import { type PatternChoice, passesOf } from './advice.ts';
import { COMPRESSION_FACTORS, simulationBand } from './band.ts';
import { type ComputedLoads, computedLoads } from './computed-loads.ts';
import type { SimulationJoint } from './joint-model.ts';
import { USUAL_LIMIT_PERCENT } from './passes-needed.ts';
import type { TighteningPass } from './sequence-steps.ts';
import { simulateTightening } from './simulate.ts';
import { type StandardJointRequest, standardJoint } from './standard-joint.ts';
import { WINDOW_CAP_LIMITS, type WindowCap, windowCap } from './window-cap.ts';

/** What a plan in torques is made from. */
export interface PlanTorquesRequest {
  readonly joint: SimulationJoint;
  readonly target_N: number;
  /** Torque of the target load; torque is proportional to load. */
  readonly torque_Nm: number;
  readonly cap: WindowCap;
  /** Half width of the tool's range, percent. */
  readonly scatter_percent: number;
  /** Division of the wrench, N·m. */
  readonly toolDivision_Nm: number;
  /** Most set values in a pass, 1 to 4. */
  readonly setValues: number;
  /** The usual way on this joint, to compare with. */
  readonly usual: readonly TighteningPass[];
  /** Limit on every bolt, percent of target; 10 where not given. */
  readonly limit_percent?: number;
}

/** A target whose passes are to be set with computed loads. */
export interface TorquePlanRequest {
  readonly joint: StandardJointRequest;
  /** The calculated target: its limits give the cap, its torque and load the scale of the tool. */
  readonly answer: Pick<TargetAnswer, 'window' | 'target' | 'spread' | 'tool'>;
  /** Division of the wrench, N·m. */
  readonly toolDivision_Nm: number;
  /** Most set values in a pass, 1 to 4. */
  readonly setValues: number;
  /** The usual way on this joint, to compare with. */
  readonly usual: PatternChoice;
  /** Limit on every bolt, percent of target; 10 where not given. */
  readonly limit_percent?: number;
}

/** One pass: its set values and which of them each bolt is tightened to, in order. */
export interface TorquePass {
  /** Load of all bolts that the pass aims at, percent of target. */
  readonly level_percent: number;
  /** Rising. */
  readonly setValues_Nm: readonly number[];
  /** One bolt after another, clockwise from 1, with the index of its set value. */
  readonly steps: readonly { readonly bolt: number; readonly setValue: number }[];
}

/** Set values of every pass, or the statement that nothing is gained. */
export interface TorquePlan {
  readonly worthwhile: boolean;
  readonly statement: { readonly code: string; readonly message: string };
  readonly cap: WindowCap;
  readonly passes: readonly TorquePass[];
  /** Simulated with the set values as rounded, percent of target. */
  readonly final: { readonly min: number; readonly mean: number; readonly max: number } | undefined;
  /** Lowest and highest bolt with wrong gasket data and the tool's scatter. */
  readonly band: { readonly min: number; readonly max: number } | undefined;
  readonly moves: number;
  readonly movesSaved: number;
  readonly passesSaved: number;
  /** How often the wrench is set anew. */
  readonly turns: number;
  /** Over the band of gasket compression. */
  readonly gasketPeak_MPa: number | undefined;
  /** Largest difference of the gap across the flange after any step. */
  readonly largestTilt_mm: number | undefined;
  readonly plan: ComputedLoads;
  readonly warnings: readonly Warning[];
}

const SCATTER_SEED = 1;
const MOST_SCATTER_PERCENT = 60;

/**
 * Torques of each step that leave a joint uniform in fewer passes, under the cap of its own window.
 *
 * Torque is proportional to load with the lubricant of the target. Loads above target stand on few bolts at a time;
 * the cap takes every limit of the window as if all bolts had the load, with the tool's scatter on top of those that
 * do not hold it already.
 * @param request.answer a target set by torque, inside an open window
 * @throws CalcRefusal `computed-loads-need-torque`, `computed-loads-outside-window`, and as `standardJoint` and
 *   `computedLoads`
 */
export function torquePlan(request: TorquePlanRequest): TorquePlan {
  const { answer, toolDivision_Nm, setValues, usual, limit_percent = USUAL_LIMIT_PERCENT } = request;
  const { torque_Nm } = answer.tool;
  if (torque_Nm === undefined)
    refuse(
      'tightening.way',
      'computed-loads-need-torque',
      'Computed loads are worked out for torque; this target is not set by torque. Keep the pattern of the procedure.',
    );
  if (!answer.window.open || !answer.spread.insideWindow)
    refuse(
      'tightening.way',
      'computed-loads-outside-window',
      'The target with its spread is not inside its window, so nothing may be set above it. Keep the pattern of the procedure.',
    );
  const prepared = standardJoint(request.joint);
  const { target, spread } = answer;
  const plan = planTorques({
    joint: prepared.joint,
    target_N: target.boltLoad_N,
    torque_Nm,
    cap: windowCap(answer),
    scatter_percent: Math.min(MOST_SCATTER_PERCENT, (spread.high_MPa / target.boltStress_MPa - 1) * 100),
    toolDivision_Nm,
    setValues,
    usual: passesOf(usual, prepared.joint.boltCount),
    limit_percent,
  });
  return {
    ...plan,
    warnings: [...prepared.warnings, ...plan.warnings],
  };
}

/**
 * The plan itself: computed loads under a cap, in torques on the division of a wrench, with their band.
 * @throws CalcRefusal as `computedLoads`
 */
export function planTorques(request: PlanTorquesRequest): TorquePlan {
  const {
    joint,
    target_N,
    torque_Nm,
    cap,
    toolDivision_Nm,
    setValues,
    usual,
    limit_percent = USUAL_LIMIT_PERCENT,
  } = request;
  const perNewton = torque_Nm / target_N;
  const plan = computedLoads({
    joint,
    target_N,
    cap_N: Math.min(cap.cap_N, WINDOW_CAP_LIMITS.most * target_N),
    division_N: toolDivision_Nm / perNewton,
    setValues,
    limit_percent,
    conventional: usual,
  });
  // A load on the tool's division is a whole number of divisions of torque.
  const torqueOf = (load_N: number) => Math.round((load_N * perNewton) / toolDivision_Nm) * toolDivision_Nm;
  const passes = plan.passes.map((pass): TorquePass => {
    const setValues_Nm = [...new Set(pass.setValues_N.map(torqueOf))];
    return {
      level_percent: pass.level_percent,
      setValues_Nm,
      steps: pass.steps.flatMap(({ bolts, loads_N }) =>
        bolts.map((bolt, k) => ({ bolt, setValue: setValues_Nm.indexOf(torqueOf(loads_N[k] ?? 0)) })),
      ),
    };
  });
  return {
    worthwhile: plan.worthwhile,
    statement: plan.statement,
    cap,
    passes,
    final: plan.final,
    moves: plan.moves,
    movesSaved: plan.movesSaved,
    passesSaved: plan.passesSaved,
    turns: plan.turns,
    plan,
    ...expected(request, plan),
  };
}

function expected(
  { joint, target_N, scatter_percent }: PlanTorquesRequest,
  plan: ComputedLoads,
): Pick<TorquePlan, 'band' | 'gasketPeak_MPa' | 'largestTilt_mm' | 'warnings'> {
  if (!plan.worthwhile) return { band: undefined, gasketPeak_MPa: undefined, largestTilt_mm: undefined, warnings: [] };
  const request = { joint, target_N, passes: plan.sequence, record: 'none' as const };
  const { low, high } = simulationBand(request, { scatter_percent, seed: SCATTER_SEED });
  const runs = COMPRESSION_FACTORS.map((compressionFactor) =>
    simulateTightening({ ...request, choices: { compressionFactor } }),
  );
  return {
    band: { min: low.min, max: high.max },
    gasketPeak_MPa: Math.max(...runs.map((run) => run.gasketPeak_MPa)),
    largestTilt_mm: Math.max(...runs.map((run) => run.largestParallelism_mm)),
    // The gasket as given speaks for its curve; at other compressions the curve is another.
    warnings: runs[COMPRESSION_FACTORS.indexOf(1)]?.warnings ?? [],
  };
}
