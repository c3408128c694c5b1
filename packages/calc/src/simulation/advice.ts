import { requireInRange } from '../checks.ts';
import { CalcRefusal } from '../refusal.ts';
import type { SequencePattern } from '../sequence/request.ts';
import { tighteningSequence } from '../sequence/tightening-sequence.ts';
import type { Warning } from '../working.ts';
import { COMPRESSION_FACTORS } from './band.ts';
import type { SimulationJoint, SolverChoices } from './joint-model.ts';
import { type PassesNeeded, passesNeeded, USUAL_LIMIT_PERCENT, withinLimit } from './passes-needed.ts';
import { clockwiseRound, oneByOne, type TighteningPass } from './sequence-steps.ts';
import type { LoadStatistics } from './simulate.ts';
import { SIMULATION_LIMITS } from './texts.ts';

/** A way of tightening that advice compares. */
export interface PatternChoice {
  readonly pattern: SequencePattern;
  readonly tools?: number;
  readonly group?: number;
  readonly passPercents?: readonly number[];
}

/** How long the wrench takes. */
export interface WrenchTimes {
  /** From nut to nut with the tightening, s. Common practice for a hydraulic wrench: 60. */
  readonly perSetting_s: number;
  /** To change the set value between passes, s. Common practice: 300. */
  readonly perPass_s: number;
}

/** Usual times where a site has none of its own (common practice). */
export const USUAL_TIMES: WrenchTimes = { perSetting_s: 60, perPass_s: 300 };

/** What advice is asked for. */
export interface AdviceRequest {
  readonly joint: SimulationJoint;
  readonly target_N: number;
  /** Limit on every bolt, percent of target; 10 where not given. */
  readonly limit_percent?: number;
  /** Ways to compare; all that the tools allow where not given. */
  readonly choices?: readonly PatternChoice[];
  /** Most tools that can be used at once; 1 where not given. */
  readonly toolsAtOnce?: number;
  readonly times?: WrenchTimes;
  readonly creep_mm3_per_N?: number;
  readonly solver?: SolverChoices;
}

/** What a pattern comes to. */
export interface PatternAdvice {
  readonly choice: PatternChoice;
  /** Whether the pattern with its extra rounds brings every bolt within the limit. */
  readonly meetsLimit: boolean;
  /** 1 is best; patterns whose bands overlap have the same rank. Undefined without a number of passes. */
  readonly rank: number | undefined;
  readonly extraRounds: number | undefined;
  readonly final: LoadStatistics;
  readonly moves: number;
  /** Moves over the band of gasket compression. */
  readonly movesBand: { readonly low: number; readonly high: number } | undefined;
  readonly time_min: number;
  readonly parallelism_mm: number;
  /** Largest difference of the gap across the flange after any step. */
  readonly largestParallelism_mm: number;
  readonly gasketPeak_MPa: number;
  readonly passes: readonly TighteningPass[];
  readonly warnings: readonly Warning[];
}

/** Patterns compared; the engineer chooses. */
export interface Advice {
  readonly patterns: readonly PatternAdvice[];
  readonly limit_percent: number;
  readonly statement: string;
}

/** Patterns that fit a joint and the tools at hand. */
export function usualChoices(boltCount: number, toolsAtOnce = 1): readonly PatternChoice[] {
  const choices: PatternChoice[] = [{ pattern: 'legacy' }];
  if (boltCount >= 12) choices.push({ pattern: 'modified-legacy' });
  if (boltCount >= 16) choices.push({ pattern: 'quadrant' });
  choices.push({ pattern: 'circular' });
  for (const tools of [2, 4, 8])
    if (tools <= toolsAtOnce && boltCount % tools === 0 && boltCount > tools)
      choices.push({ pattern: 'simultaneous', tools }, { pattern: 'simultaneous-circular', tools });
  return choices;
}

/** Passes of a choice without the relaxation pass, in clockwise numbers. */
export function passesOf(choice: PatternChoice, boltCount: number): readonly TighteningPass[] {
  const { passes } = tighteningSequence({ ...choice, boltCount, numbering: 'clockwise', relaxation: false });
  return passes.map(({ percent, steps }) => ({
    percent,
    steps: choice.group === undefined ? steps : oneByOne(steps),
  }));
}

/**
 * Compares patterns: which bring every bolt within the limit, ranked by moves and wrench time.
 *
 * Each pattern gets rounds at 100 % until the limit is met, with the gasket as given and at half and one and a
 * half times its compression. Patterns whose ranges of moves overlap are equal: the order among them is by
 * time and means nothing more.
 * @throws CalcRefusal as `simulateTightening` and `tighteningSequence`
 */
export function adviseTightening(request: AdviceRequest): Advice {
  const { joint, limit_percent = USUAL_LIMIT_PERCENT, times = USUAL_TIMES } = request;
  requireInRange([
    ['limit_percent', limit_percent, { min: 1, max: 50 }],
    ['times.perSetting_s', times.perSetting_s, { min: 0 }],
    ['times.perPass_s', times.perPass_s, { min: 0 }],
  ]);
  const choices = request.choices ?? usualChoices(joint.boltCount, request.toolsAtOnce);
  if (choices.length === 0 || choices.length > 24)
    throw new CalcRefusal([
      {
        path: 'choices',
        code: 'out-of-range',
        message: `${choices.length} patterns were given; compare 1 to 24.`,
        limit: 24,
      },
    ]);
  const compared = choices.map((choice) => comparePattern(request, choice, limit_percent, times));
  const ranked = compared.map((pattern) => ({ ...pattern, rank: rankOf(pattern, compared) }));
  ranked.sort(
    (a, b) => (a.rank ?? Infinity) - (b.rank ?? Infinity) || a.moves - b.moves || a.time_min - b.time_min || 0,
  );
  const meeting = ranked.filter((pattern) => pattern.meetsLimit).length;
  return {
    patterns: ranked,
    limit_percent,
    statement:
      `${meeting} of ${ranked.length} patterns bring every bolt within ±${limit_percent} %. ` +
      `Patterns of the same rank are equal within the band of gasket data. ${SIMULATION_LIMITS['simulation.limits.band']}`,
  };
}

function comparePattern(
  request: AdviceRequest,
  choice: PatternChoice,
  limit_percent: number,
  times: WrenchTimes,
): PatternAdvice {
  const { joint, target_N, creep_mm3_per_N = 0 } = request;
  const passes = passesOf(choice, joint.boltCount);
  const round: TighteningPass = passes.at(-1) ?? { steps: clockwiseRound(joint.boltCount) };
  const runs = COMPRESSION_FACTORS.map((compressionFactor) =>
    passesNeeded(
      { joint, target_N, passes, creep_mm3_per_N, choices: { ...request.solver, compressionFactor } },
      limit_percent,
      round,
    ),
  );
  const given: PassesNeeded = runs[COMPRESSION_FACTORS.indexOf(1)]!;
  const rounds = given.extraRounds ?? 0;
  const { warnings } = tighteningSequence({ ...choice, boltCount: joint.boltCount, numbering: 'clockwise' });
  const moves = runs.map((run) => run.moves);
  return {
    choice,
    meetsLimit: withinLimit(given.final, limit_percent),
    rank: undefined,
    extraRounds: given.extraRounds,
    final: given.final,
    moves: given.moves,
    movesBand: runs.every((run) => run.extraRounds !== undefined)
      ? { low: Math.min(...moves), high: Math.max(...moves) }
      : undefined,
    time_min: (given.settings * times.perSetting_s + (passes.length + rounds) * times.perPass_s) / 60,
    parallelism_mm: given.parallelism_mm,
    largestParallelism_mm: given.largestParallelism_mm,
    gasketPeak_MPa: given.gasketPeak_MPa,
    passes: [...passes, ...Array.from({ length: rounds }, () => ({ ...round, percent: 100 }))],
    warnings: [...warnings, ...given.warnings],
  };
}

// One more than the number of patterns that need fewer moves all over the band.
function rankOf(pattern: PatternAdvice, all: readonly PatternAdvice[]): number | undefined {
  if (!pattern.meetsLimit || pattern.extraRounds === undefined) return undefined;
  const low = pattern.movesBand?.low ?? pattern.moves;
  return 1 + all.filter((other) => other.movesBand !== undefined && other.movesBand.high < low).length;
}
