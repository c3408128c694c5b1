import { requireInRange } from '../checks.ts';
import { checkJoint } from './check-joint.ts';
import { jointModel } from './joint-model.ts';
import { JointState } from './joint-state.ts';
import { seededNormal } from './random.ts';
import { type SolverStep, solverSteps } from './sequence-steps.ts';
import { type LoadStatistics, loadStatistics, runPasses, type SimulationRequest } from './simulate.ts';

/** Scaling of the gasket's compression at the ends of the band. */
export const COMPRESSION_FACTORS: readonly number[] = [0.5, 1, 1.5];
/** Runs with scattered tool loads; the band takes their 5th and 95th percentile. */
export const SCATTER_RUNS = 60;

/** Range of the final loads, percent of target. */
export interface LoadBand {
  readonly low: { readonly min: number; readonly mean: number; readonly max: number };
  readonly high: { readonly min: number; readonly mean: number; readonly max: number };
}

/** What the tool's loads scatter by. */
export interface ToolScatter {
  /** Half width of the range that holds 95 of 100 loads, percent. */
  readonly scatter_percent: number;
  readonly seed: number;
  readonly runs?: number;
}

function finalLoads(
  request: SimulationRequest,
  passes: readonly (readonly SolverStep[])[],
  compressionFactor: number,
): LoadStatistics {
  const { joint, target_N, choices } = request;
  const state = new JointState(jointModel(joint, { ...choices, compressionFactor }), target_N);
  runPasses(state, passes, target_N, request.creep_mm3_per_N ?? 0);
  return loadStatistics(state.loads, target_N);
}

function scattered(
  passes: readonly (readonly SolverStep[])[],
  deviation: number,
  normal: () => number,
): readonly (readonly SolverStep[])[] {
  return passes.map((steps) =>
    steps.map((step) => ({
      bolts: step.bolts,
      // At most three deviations of 0.3: a load stays above a tenth of what it was set to.
      shares: step.shares.map((share) => share * (1 + deviation * normal())),
    })),
  );
}

/** Value below which a share of the sorted values lies. */
function percentile(values: readonly number[], share: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.max(0, Math.round(share * (sorted.length - 1))))]!;
}

/**
 * Band of the final loads: gasket compression at half and one and a half times its curve, and tool scatter.
 *
 * @param request as for `simulateTightening`
 * @param scatter tool scatter, where known; loads are drawn normally, cut off at three standard deviations
 * @returns lowest and highest of the lowest, of the mean and of the highest load, percent of target
 * @throws CalcRefusal as `simulateTightening`
 */
export function simulationBand(request: SimulationRequest, scatter?: ToolScatter): LoadBand {
  const runs = bandRuns(request, scatter);
  for (;;) {
    const { done, value } = runs.next();
    if (done) return value;
  }
}

/** The same run by run, so that others can be answered between them. */
export function* bandRuns(request: SimulationRequest, scatter?: ToolScatter): Generator<undefined, LoadBand> {
  checkJoint(request.joint);
  requireInRange([
    ['target_N', request.target_N, { min: 0, open: true }],
    ['scatter_percent', scatter?.scatter_percent, { min: 0, max: 60 }],
    ['runs', scatter?.runs, { min: 1, max: 1000 }],
  ]);
  const passes = solverSteps(request.passes, request.joint.boltCount);
  const finals: LoadStatistics[] = [];
  for (const factor of COMPRESSION_FACTORS) {
    finals.push(finalLoads(request, passes, factor));
    yield;
  }
  const runs: LoadStatistics[] = [];
  if (scatter !== undefined && scatter.scatter_percent > 0) {
    const normal = seededNormal(scatter.seed);
    for (let run = 0; run < (scatter.runs ?? SCATTER_RUNS); run++) {
      runs.push(finalLoads(request, scattered(passes, scatter.scatter_percent / 200, normal), 1));
      yield;
    }
  }
  const rangeOf = (part: 'min' | 'mean' | 'max') => {
    const values = finals.map((final) => final[part]);
    const scattering = runs.map((run) => run[part]);
    if (scattering.length > 0) values.push(percentile(scattering, 0.05), percentile(scattering, 0.95));
    return { low: Math.min(...values), high: Math.max(...values) };
  };
  const [min, mean, max] = [rangeOf('min'), rangeOf('mean'), rangeOf('max')];
  return {
    low: { min: min.low, mean: mean.low, max: max.low },
    high: { min: min.high, mean: mean.high, max: max.high },
  };
}
