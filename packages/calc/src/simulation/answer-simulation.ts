import { requireInRange } from '../checks.ts';
import { refuse } from '../refusal.ts';
import { type Explainable, type Explained, explained, show, stepsFor, type Warning } from '../working.ts';
import { type LoadBand, SCATTER_RUNS, simulationBand } from './band.ts';
import { boltStiffness, type SimulationJoint } from './joint-model.ts';
import type { TighteningPass } from './sequence-steps.ts';
import { type LoadStatistics, simulateTightening } from './simulate.ts';
import {
  type PreparedJoint,
  type RingJointRequest,
  ringJoint,
  type StandardJointRequest,
  standardJoint,
} from './standard-joint.ts';
import { SIMULATION_LIMITS } from './texts.ts';

/** Conditions of a simulation as a caller gives them. */
export interface SimulationOptions {
  /** Set of the gasket between passes, mm per MPa. */
  readonly creep?: number;
  /** Closure at which a solid guide ring stops the faces, mm. */
  readonly guideRingClosure_mm?: number;
  /** Difference of the gap across the flange before tightening, widest at bolt 1, mm. */
  readonly initialTilt_mm?: number;
  /** Half width of the range of the tool, percent; with `seed`. */
  readonly scatter_percent?: number;
  readonly seed?: number;
}

/** One sequence with its conditions. */
export interface SimulatedCase {
  readonly passes: readonly TighteningPass[];
  readonly options?: SimulationOptions;
}

/** A simulation by joint, target and passes, one or several to compare. */
export interface SimulationAnswerRequest extends Explainable {
  readonly joint: StandardJointRequest | RingJointRequest;
  readonly target_MPa: number;
  /** Area that the target stress is on. */
  readonly area: 'tensile' | 'root';
  readonly passes?: readonly TighteningPass[];
  readonly options?: SimulationOptions;
  readonly compare?: readonly SimulatedCase[];
}

/** Answer for one sequence. */
export interface CaseAnswer {
  readonly steps: readonly { readonly loads_percent: readonly number[]; readonly gap_mm: readonly number[] }[];
  readonly final: LoadStatistics;
  readonly gasketPeak_MPa: number;
  readonly parallelism_mm: number;
  readonly moves: number;
  readonly band: LoadBand;
}

/** Answer of a simulation: the case itself where `passes` were given, the others under `compare`. */
export type SimulationAnswer = Partial<CaseAnswer> & {
  readonly compare?: readonly CaseAnswer[];
  readonly limits: readonly string[];
} & Explained;

/** Stop of a spiral-wound gasket's guide ring: a steel ring 3 mm thick, taken as 5 mm wide. An estimate. */
const GUIDE_RING_N_PER_MM2 = (200_000 * 5) / 3;
/** Steps of all scatter runs together. */
const SCATTER_STEPS = 6000;

/** The joint with what the options do to it. */
export function conditioned(joint: SimulationJoint, options: SimulationOptions): SimulationJoint {
  requireInRange([
    ['options.creep', options.creep, { min: 0, max: 1 }],
    ['options.guideRingClosure_mm', options.guideRingClosure_mm, { min: 0, max: 20, open: true }],
    ['options.initialTilt_mm', options.initialTilt_mm, { min: 0, max: 20 }],
    ['options.scatter_percent', options.scatter_percent, { min: 0, max: 60 }],
    ['options.seed', options.seed, { min: 0, max: 4_294_967_295 }],
  ]);
  const { guideRingClosure_mm, initialTilt_mm } = options;
  return {
    ...joint,
    ...(guideRingClosure_mm === undefined
      ? {}
      : {
          guideRing: {
            closure_mm: guideRingClosure_mm,
            diameter_mm: joint.gasket.contactOutside_mm + 5,
            stiffness_N_per_mm2: GUIDE_RING_N_PER_MM2,
          },
        }),
    ...(initialTilt_mm === undefined || initialTilt_mm === 0
      ? {}
      : { initialTilt: { difference_mm: initialTilt_mm, widestAt_deg: 0 } }),
  };
}

function answerCase(
  prepared: PreparedJoint,
  target_N: number,
  { passes, options = {} }: SimulatedCase,
  warn: (warning: Warning) => void,
): CaseAnswer {
  const joint = conditioned(prepared.joint, options);
  const request = {
    joint,
    target_N,
    passes,
    ...(options.creep === undefined ? {} : { creep_mm3_per_N: options.creep }),
  };
  const simulated = simulateTightening(request);
  const { scatter_percent = 0, seed } = options;
  if (scatter_percent > 0 && seed === undefined)
    refuse('options.seed', 'seed-missing', 'Tool scatter is drawn at random: give a seed, so that the answer repeats.');
  const runs = Math.max(12, Math.min(SCATTER_RUNS, Math.floor(SCATTER_STEPS / simulated.steps.length)));
  const band = simulationBand(request, seed === undefined ? undefined : { scatter_percent, seed, runs });
  simulated.warnings.forEach(warn);
  if (simulated.guideRingShare > 0)
    warn({
      code: 'guide-ring-carries',
      message: `The guide ring carries ${(simulated.guideRingShare * 100).toFixed(0)} % of the bolt load at the end; its stiffness is an estimate.`,
    });
  return {
    steps: simulated.steps.map(({ loads_percent, gap_mm }) => ({ loads_percent, gap_mm })),
    final: simulated.final,
    gasketPeak_MPa: simulated.gasketPeak_MPa,
    parallelism_mm: simulated.parallelism_mm,
    moves: simulated.moves,
    band,
  };
}

/**
 * Simulates one sequence, or several to compare, on a standard joint or one given by its equivalent ring.
 *
 * @param request.joint the equivalent ring is per flange, both flanges alike
 * @param request.target_MPa bolt stress on the stated area
 * @param request.passes steps in clockwise numbers; give these, `compare`, or both
 * @returns loads in percent of target in clockwise order, band, warnings, and the limits to print beside it
 * @throws CalcRefusal `no-steps`, `seed-missing`, and as `standardJoint`, `ringJoint`, `simulateTightening`
 */
export function answerSimulation(request: SimulationAnswerRequest): SimulationAnswer {
  const { joint, target_MPa, area, passes, options, compare } = request;
  requireInRange([['target_MPa', target_MPa, { min: 0, max: 2000, open: true }]]);
  if (passes === undefined && (compare === undefined || compare.length === 0))
    refuse('passes', 'no-steps', 'Give passes, or several sequences under compare.');
  const prepared = 'equivalentRing' in joint ? ringJoint(joint) : standardJoint(joint);
  const stressArea = area === 'tensile' ? prepared.tensileArea_mm2 : prepared.rootArea_mm2;
  const target_N = target_MPa * stressArea;
  const warnings = [...prepared.warnings];
  const warn = (warning: Warning) => {
    if (!warnings.some(({ code, message }) => code === warning.code && message === warning.message))
      warnings.push(warning);
  };
  const own =
    passes === undefined
      ? {}
      : answerCase(prepared, target_N, options === undefined ? { passes } : { passes, options }, warn);
  const others = compare?.map((item) => answerCase(prepared, target_N, item, warn));
  const steps = stepsFor(request);
  const { boltLength_mm, boltArea_mm2, boltCompliance_mm_per_N } = prepared.joint;
  steps?.push(
    {
      symbol: 'F*',
      meaning: 'target load of one bolt',
      formula: 'σ·A',
      substituted: `${show(target_MPa)} × ${show(stressArea)}`,
      value: target_N,
      unit: 'N',
      source: `${area} stress area of ${prepared.thread}`,
    },
    {
      symbol: 'kb',
      meaning: 'stiffness of one bolt with the local compliance of the flanges',
      formula: '1/(L/(E·As) + c)',
      substituted: `1 / (${show(boltLength_mm)} / (200000 × ${show(boltArea_mm2)}) + ${show(boltCompliance_mm_per_N)})`,
      value: boltStiffness(prepared.joint),
      unit: 'N/mm',
      source: `bar in tension; ring: ${prepared.ringSource}`,
    },
  );
  return explained(
    {
      ...own,
      ...(others === undefined ? {} : { compare: others }),
      limits: Object.values(SIMULATION_LIMITS),
    },
    warnings,
    steps,
  );
}
