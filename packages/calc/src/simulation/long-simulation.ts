import { requireInRange } from '../checks.ts';
import { refuse } from '../refusal.ts';
import type { Warning } from '../working.ts';
import { conditioned, type SimulatedCase, type SimulationAnswerRequest } from './answer-simulation.ts';
import { bandRuns, COMPRESSION_FACTORS, type LoadBand } from './band.ts';
import { type LoadStatistics, simulateTightening } from './simulate.ts';
import { ringJoint, standardJoint } from './standard-joint.ts';
import { SIMULATION_LIMITS } from './texts.ts';

/** Many sequences on one joint, with as many scattered runs of each as a steady band needs. */
export interface LongSimulationRequest
  extends Required<Pick<SimulationAnswerRequest, 'joint' | 'target_MPa' | 'area' | 'compare'>> {
  /** Runs with scattered tool loads of each sequence that has a scatter. */
  readonly scatterRuns: number;
}

/** What a sequence comes to, without its steps. */
export interface LongCase {
  readonly final: LoadStatistics;
  readonly gasketPeak_MPa: number;
  readonly parallelism_mm: number;
  readonly largestParallelism_mm: number;
  readonly moves: number;
  readonly band: LoadBand;
}

export interface LongSimulation {
  readonly cases: readonly LongCase[];
  readonly limits: readonly string[];
  readonly warnings: readonly Warning[];
}

const hasScatter = ({ options }: SimulatedCase): boolean => (options?.scatter_percent ?? 0) > 0;

/** Simulations that a request needs: its measure of progress. */
export const longSimulationRuns = ({ compare, scatterRuns }: Pick<LongSimulationRequest, 'compare' | 'scatterRuns'>) =>
  compare.reduce((sum, item) => sum + 1 + COMPRESSION_FACTORS.length + (hasScatter(item) ? scatterRuns : 0), 0);

/**
 * Simulates many sequences run by run: yields the number of runs done, so that a caller can answer others between.
 * @param request.scatterRuns 1 to 1000
 * @returns final loads and band of every sequence, in order
 * @throws CalcRefusal `out-of-range`, `seed-missing`, and as `answerSimulation`
 */
export function* longSimulation(request: LongSimulationRequest): Generator<number, LongSimulation> {
  const { joint, target_MPa, area, compare, scatterRuns } = request;
  requireInRange([
    ['target_MPa', target_MPa, { min: 0, max: 2000, open: true }],
    ['scatterRuns', scatterRuns, { min: 1, max: 1000 }],
  ]);
  const prepared = 'equivalentRing' in joint ? ringJoint(joint) : standardJoint(joint);
  const target_N = target_MPa * (area === 'tensile' ? prepared.tensileArea_mm2 : prepared.rootArea_mm2);
  const warnings = [...prepared.warnings];
  const cases: LongCase[] = [];
  let done = 0;
  for (const item of compare) {
    const { passes, options = {} } = item;
    const { scatter_percent = 0, seed, creep } = options;
    if (scatter_percent > 0 && seed === undefined)
      refuse(
        'options.seed',
        'seed-missing',
        'Tool scatter is drawn at random: give a seed, so that the answer repeats.',
      );
    const asked = {
      joint: conditioned(prepared.joint, options),
      target_N,
      passes,
      record: 'none' as const,
      ...(creep === undefined ? {} : { creep_mm3_per_N: creep }),
    };
    const {
      final,
      gasketPeak_MPa,
      parallelism_mm,
      largestParallelism_mm,
      moves,
      warnings: said,
    } = simulateTightening(asked);
    yield ++done;
    const band = bandRuns(asked, seed === undefined ? undefined : { scatter_percent, seed, runs: scatterRuns });
    let step = band.next();
    for (; !step.done; step = band.next()) yield ++done;
    for (const warning of said)
      if (!warnings.some(({ message }) => message === warning.message)) warnings.push(warning);
    cases.push({ final, gasketPeak_MPa, parallelism_mm, largestParallelism_mm, moves, band: step.value });
  }
  return { cases, limits: Object.values(SIMULATION_LIMITS), warnings };
}
