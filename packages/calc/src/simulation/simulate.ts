import { requireInRange } from '../checks.ts';
import type { Warning } from '../working.ts';
import { checkJoint } from './check-joint.ts';
import { type JointModel, jointModel, type SimulationJoint, type SolverChoices } from './joint-model.ts';
import { JointState } from './joint-state.ts';
import { type SolverStep, solverSteps, type TighteningPass } from './sequence-steps.ts';
import { beyondCurve } from './texts.ts';

/** Loads of all bolts in brief, percent of target. */
export interface LoadStatistics {
  readonly min: number;
  readonly mean: number;
  readonly max: number;
  /** Standard deviation. */
  readonly sd: number;
}

/** The joint after a step. */
export interface SimulatedStep {
  /** Index of its pass, from 0. */
  readonly pass: number;
  /** Bolts tightened, clockwise from 1. */
  readonly bolts: readonly number[];
  /** Load of every bolt in clockwise order, percent of target. */
  readonly loads_percent: readonly number[];
  readonly statistics: LoadStatistics;
  /** Gap of the faces at the flange edge beside every bolt, mm: thickness before tightening less closure. */
  readonly gap_mm: readonly number[];
  readonly parallelism_mm: number;
  /** Lowest and highest gasket stress around, mean over the width, MPa. */
  readonly gasketStress_MPa: { readonly min: number; readonly max: number };
  /** Highest gasket stress reached anywhere so far, MPa. */
  readonly gasketPeak_MPa: number;
}

/** The joint after the last step. */
export interface Simulation {
  readonly steps: readonly SimulatedStep[];
  readonly loads_percent: readonly number[];
  readonly final: LoadStatistics;
  /** Gasket stress around at every station, mean over the width, with its angle from bolt 1. */
  readonly gasket: readonly { readonly angle_deg: number; readonly stress_MPa: number }[];
  readonly gasketPeak_MPa: number;
  /** Largest difference of the edge gap across the flange, mm. */
  readonly parallelism_mm: number;
  /** Largest such difference after any step. */
  readonly largestParallelism_mm: number;
  /** Share of the bolt load that goes through the guide ring instead of the gasket. */
  readonly guideRingShare: number;
  /** Number of times that a tool is set on a nut. */
  readonly moves: number;
  readonly warnings: readonly Warning[];
}

/** What is simulated. */
export interface SimulationRequest {
  readonly joint: SimulationJoint;
  /** Target load of one bolt, N. */
  readonly target_N: number;
  readonly passes: readonly TighteningPass[];
  /** Set of the gasket between passes, mm per MPa of its stress. */
  readonly creep_mm3_per_N?: number;
  /** `none` leaves out the record of each step: for rankings and bands. */
  readonly record?: 'steps' | 'none';
  readonly choices?: SolverChoices;
}

/** Statistics of loads given as shares of target. */
export function loadStatistics(loads: ArrayLike<number>, target_N: number): LoadStatistics {
  let min = Infinity;
  let max = -Infinity;
  let sum = 0;
  for (let bolt = 0; bolt < loads.length; bolt++) {
    const load = loads[bolt]!;
    if (load < min) min = load;
    if (load > max) max = load;
    sum += load;
  }
  const mean = sum / loads.length;
  let squares = 0;
  for (let bolt = 0; bolt < loads.length; bolt++) squares += (loads[bolt]! - mean) ** 2;
  const percent = 100 / target_N;
  return {
    min: min * percent,
    mean: mean * percent,
    max: max * percent,
    sd: Math.sqrt(squares / loads.length) * percent,
  };
}

/** Gap of the faces at the edge of a station, mm. */
function edgeGap(state: JointState, station: number): number {
  const { joint, gaps, edgeLever } = state.model;
  return joint.gasket.curve.thickness_mm + gaps[4 * station + 3]! - state.closureAt(station, edgeLever);
}

/** Largest difference of the edge gap between opposite stations, mm. */
export function parallelism(state: JointState): number {
  const half = state.model.stations / 2;
  let largest = 0;
  for (let station = 0; station < half; station++)
    largest = Math.max(largest, Math.abs(edgeGap(state, station) - edgeGap(state, station + half)));
  return largest;
}

/** Mean gasket stress over the width at every station, MPa. */
function stressAround(state: JointState): Float64Array {
  const stress = state.gasketStress();
  return Float64Array.from({ length: state.model.stations }, (_, i) => (stress[2 * i]! + stress[2 * i + 1]!) / 2);
}

function recordStep(state: JointState, target_N: number, pass: number, step: SolverStep): SimulatedStep {
  const { stationsPerBolt } = state.model;
  const around = stressAround(state);
  return {
    pass,
    bolts: step.bolts.map((bolt) => bolt + 1),
    loads_percent: Array.from(state.loads, (load) => (load / target_N) * 100),
    statistics: loadStatistics(state.loads, target_N),
    gap_mm: Array.from(state.loads, (_, bolt) => edgeGap(state, bolt * stationsPerBolt)),
    parallelism_mm: parallelism(state),
    gasketStress_MPa: { min: around.reduce((a, b) => Math.min(a, b)), max: around.reduce((a, b) => Math.max(a, b)) },
    gasketPeak_MPa: state.highestStress,
  };
}

/** Tightens a state pass by pass; calls back after each step. */
export function runPasses(
  state: JointState,
  passes: readonly (readonly SolverStep[])[],
  target_N: number,
  creep_mm3_per_N: number,
  afterStep?: (pass: number, step: SolverStep) => void,
): void {
  passes.forEach((steps, pass) => {
    if (pass > 0 && creep_mm3_per_N > 0) state.relax(creep_mm3_per_N);
    for (const step of steps) {
      state.tighten(
        step.bolts,
        step.shares.map((share) => share * target_N),
      );
      afterStep?.(pass, step);
    }
    state.correct();
  });
}

/**
 * Simulates a tightening sequence: every bolt load after every step.
 *
 * Model and limits: README of this folder. Bolts are numbered clockwise from 1; nuts start hand tight.
 * @param request.target_N target load of one bolt, N, above 0
 * @param request.passes bolts of a step are tightened together; a nut above its load does not move
 * @returns loads, gaps, gasket stress, parallelism and moves
 * @throws CalcRefusal `out-of-range`, `gasket-curve-must-rise`, `gasket-contact-impossible`,
 *   `bolt-compliance-not-positive`, `simulation-not-converged`, and as `solverSteps`
 * @example simulateTightening({ joint, target_N: 1e5, passes: [{ percent: 100, steps: [[1], [3], [2], [4]] }] })
 */
export function simulateTightening(request: SimulationRequest): Simulation {
  const { joint, target_N, creep_mm3_per_N = 0 } = request;
  checkJoint(joint);
  requireInRange([
    ['target_N', target_N, { min: 0, open: true }],
    ['creep_mm3_per_N', creep_mm3_per_N, { min: 0 }],
  ]);
  const passes = solverSteps(request.passes, joint.boltCount);
  const model = jointModel(joint, request.choices);
  const state = new JointState(model, target_N);
  const steps: SimulatedStep[] = [];
  let largestParallelism = 0;
  runPasses(state, passes, target_N, creep_mm3_per_N, (pass, step) => {
    largestParallelism = Math.max(largestParallelism, parallelism(state));
    if (request.record !== 'none') steps.push(recordStep(state, target_N, pass, step));
  });
  return {
    steps,
    ...finish(state, model, target_N),
    largestParallelism_mm: largestParallelism,
    moves: passes.flat().reduce((sum, step) => sum + step.bolts.length, 0),
  };
}

function finish(state: JointState, model: JointModel, target_N: number) {
  const around = stressAround(state);
  const end = model.law.lastStress_MPa;
  let carried = 0;
  for (const load of state.loads) carried += load;
  return {
    loads_percent: Array.from(state.loads, (load) => (load / target_N) * 100),
    final: loadStatistics(state.loads, target_N),
    gasket: Array.from(around, (stress_MPa, i) => ({ angle_deg: (i * 360) / model.stations, stress_MPa })),
    gasketPeak_MPa: state.highestStress,
    parallelism_mm: parallelism(state),
    guideRingShare: carried > 0 ? state.stopForce() / carried : 0,
    warnings: state.highestStress > end ? [beyondCurve(state.highestStress, end)] : [],
  };
}
