import {
  type Advice,
  adviseTightening,
  CalcRefusal,
  type LoadBand,
  passesOf,
  type RefusalItem,
  type Simulation,
  type StandardJointRequest,
  simulateTightening,
  simulationBand,
  standardJoint,
  type Warning,
} from '@seatwell/calc';
import { COMPUTED, type Way } from './choices.ts';
import { type ComputedAnswer, type ComputedJob, computedAnswer, sequenceOf } from './computed-answer.ts';

/** What the worker is asked. */
export interface SimulationJob {
  readonly joint: StandardJointRequest;
  readonly target_MPa: number;
  readonly area: 'tensile' | 'root';
  readonly choices: readonly Way[];
  readonly passPercents: readonly number[];
  readonly scatter_percent: number | undefined;
  readonly tilt_mm: number | undefined;
  readonly limit_percent: number;
  readonly toolsAtOnce: number;
  /** undefined while an input of the computed loads is missing */
  readonly computed: ComputedJob | undefined;
}

/** One pattern, step by step. */
export interface SimulatedPattern {
  readonly choice: Way;
  readonly simulation: Simulation;
  readonly band: LoadBand;
}

export interface SimulationResult {
  readonly patterns: readonly SimulatedPattern[];
  readonly advice: Advice;
  /** computed loads, or why there are none; undefined where they were not asked for */
  readonly computed: ComputedAnswer | undefined;
  readonly warnings: readonly Warning[];
  readonly target_N: number;
}

export type JobAnswer = SimulationResult | { readonly refused: readonly RefusalItem[] };

// The same scatter each time: two runs of the same inputs must show the same band.
const seed = 1;

/** Simulates the patterns and asks for advice; refusals are an answer. */
export function runSimulation(job: SimulationJob): JobAnswer {
  try {
    return simulated(job);
  } catch (error) {
    if (error instanceof CalcRefusal) return { refused: error.errors };
    throw error;
  }
}

function simulated(job: SimulationJob): SimulationResult {
  const prepared = standardJoint(job.joint);
  const joint =
    job.tilt_mm === undefined || job.tilt_mm === 0
      ? prepared.joint
      : { ...prepared.joint, initialTilt: { difference_mm: job.tilt_mm, widestAt_deg: 0 } };
  const target_N = job.target_MPa * (job.area === 'tensile' ? prepared.tensileArea_mm2 : prepared.rootArea_mm2);
  const usual = job.choices.find((choice) => choice !== COMPUTED) ?? { pattern: 'legacy' as const };
  const computed = job.computed && computedAnswer(job.computed, { ...job, usual }, { ...prepared, joint, target_N });
  const patterns = job.choices.flatMap((choice) => {
    const passes =
      choice === COMPUTED
        ? sequenceOf(computed)
        : passesOf({ ...choice, passPercents: job.passPercents }, joint.boltCount);
    if (passes.length === 0) return [];
    const request = { joint, target_N, passes };
    const scatter =
      job.scatter_percent === undefined ? undefined : { scatter_percent: job.scatter_percent, seed, runs: 40 };
    return {
      choice,
      simulation: simulateTightening(request),
      band: scatter === undefined ? simulationBand(request) : simulationBand(request, scatter),
    };
  });
  const advice = adviseTightening({
    joint,
    target_N,
    limit_percent: job.limit_percent,
    toolsAtOnce: job.toolsAtOnce,
  });
  const all = [...prepared.warnings, ...patterns.flatMap((pattern) => pattern.simulation.warnings)];
  const seen = new Set<string>();
  const warnings = all.filter(({ message }) => !seen.has(message) && seen.add(message));
  return { patterns, advice, computed, warnings, target_N };
}
