import { requireInRange } from '../checks.ts';
import { USUAL_TIMES, type WrenchTimes } from './advice.ts';
import { checkJoint } from './check-joint.ts';
import type { SimulationJoint, SolverChoices } from './joint-model.ts';
import { type PassesNeeded, passesNeeded, USUAL_LIMIT_PERCENT, withinLimit } from './passes-needed.ts';
import { bestPasses, type ComputedPass, turnsOf } from './plan-passes.ts';
import { clockwiseRound, solverSteps, type TighteningPass } from './sequence-steps.ts';
import type { LoadStatistics } from './simulate.ts';

/** A cap this close to the target leaves no room to over-tighten the first bolts. */
const LEAST_CAP = 1.03;

/** What computed loads are asked for. */
export interface ComputedLoadsRequest {
  readonly joint: SimulationJoint;
  readonly target_N: number;
  /** Highest load that the tool may be set to, N: see `toolCap`. */
  readonly cap_N: number;
  /** Order of the first pass, bolts clockwise from 1, each once; one clockwise round where not given. */
  readonly order?: readonly (readonly number[])[];
  /** Order of the later passes; one clockwise round where not given: it needs the least over-tightening. */
  readonly laterOrder?: readonly (readonly number[])[];
  /** Division of the tool in terms of bolt load, N. */
  readonly division_N: number;
  /** Most set values in a pass; 4 where not given. */
  readonly setValues?: number;
  /** Limit for the comparison with conventional passes and for the end of the plan, percent; 10. */
  readonly limit_percent?: number;
  /** The usual way to compare with; the order at 30, 70 and 100 % and a clockwise round where not given. */
  readonly conventional?: readonly TighteningPass[];
  /** Usual times where not given (common practice). */
  readonly times?: WrenchTimes;
  readonly choices?: SolverChoices;
}

/** A plan of computed loads, or the statement that it is not worth it. */
export interface ComputedLoads {
  readonly worthwhile: boolean;
  readonly statement: { readonly code: string; readonly message: string };
  readonly passes: readonly ComputedPass[];
  /** The plan as passes for `simulateTightening`. */
  readonly sequence: readonly TighteningPass[];
  readonly final: LoadStatistics | undefined;
  readonly moves: number;
  readonly conventional: PassesNeeded;
  readonly movesSaved: number;
  readonly passesSaved: number;
  /** How often the tool is set anew, in the plan and in the usual way. */
  readonly turns: number;
  readonly usualTurns: number;
  readonly time_min: number;
  readonly usualTime_min: number;
}

/**
 * Tool loads of each step that leave the joint uniform in fewer passes, under a cap.
 *
 * Each pass ends uniform at the highest level that the cap allows. The loads are grouped into a few set values
 * rounded to the tool's division; the plan is simulated again with those, and the next pass starts from there.
 * @param request.cap_N from the joint's own limits with torsion, scatter and grade in it
 * @returns `worthwhile: false` with the reason where the cap leaves nothing to gain
 * @throws CalcRefusal `out-of-range` and as `simulateTightening`
 */
export function computedLoads(request: ComputedLoadsRequest): ComputedLoads {
  const { joint, target_N, cap_N, division_N, setValues = 4, limit_percent = USUAL_LIMIT_PERCENT } = request;
  checkJoint(joint);
  requireInRange([
    ['target_N', target_N, { min: 0, open: true }],
    ['cap_N', cap_N, { min: 0, max: 3 * target_N, open: true }],
    ['division_N', division_N, { min: 0, max: target_N / 4, open: true }],
    ['setValues', setValues, { min: 1, max: 8 }],
    ['limit_percent', limit_percent, { min: 1, max: 50 }],
  ]);
  const order = request.order ?? clockwiseRound(joint.boltCount);
  const later = request.laterOrder ?? clockwiseRound(joint.boltCount);
  const [first, then] = solverSteps([{ steps: order }, { steps: later }], joint.boltCount).map((pass) =>
    pass.map((step) => step.bolts),
  );
  const usual = request.conventional ?? usualPasses(order, joint.boltCount);
  const conventional = passesNeeded({ joint, target_N, passes: usual }, limit_percent);
  const passes = cap_N < LEAST_CAP * target_N ? [] : bestPasses(request, first!, then!, setValues, limit_percent);
  const final = passes.at(-1)?.simulated;
  const moves = passes.reduce((sum, pass) => sum + pass.steps.flatMap((step) => step.bolts).length, 0);
  const usualPassCount = usual.length + (conventional.extraRounds ?? 0);
  const reached = final !== undefined && withinLimit(final, limit_percent);
  const usualReached = withinLimit(conventional.final, limit_percent);
  const times = request.times ?? USUAL_TIMES;
  const timeOf = (settings: number, turns: number) => (settings * times.perSetting_s + turns * times.perPass_s) / 60;
  const turns = turnsOf(passes);
  const time_min = timeOf(
    passes.reduce((sum, pass) => sum + pass.steps.length, 0),
    turns,
  );
  const usualTime_min = timeOf(conventional.settings, usualPassCount);
  const worthwhile = reached && (moves < conventional.moves || !usualReached);
  return {
    worthwhile,
    statement: statementOn(worthwhile, reached, request, passes.length, { moves, turns }, conventional.moves),
    passes: worthwhile ? passes : [],
    sequence: worthwhile ? passes.map((pass) => asPass(pass, target_N)) : [],
    final: worthwhile ? final : undefined,
    moves: worthwhile ? moves : conventional.moves,
    conventional,
    movesSaved: worthwhile ? conventional.moves - moves : 0,
    passesSaved: worthwhile ? usualPassCount - passes.length : 0,
    turns: worthwhile ? turns : usualPassCount,
    usualTurns: usualPassCount,
    time_min: worthwhile ? time_min : usualTime_min,
    usualTime_min,
  };
}

function usualPasses(order: readonly (readonly number[])[], boltCount: number): readonly TighteningPass[] {
  return [
    ...[30, 70, 100].map((percent) => ({ percent, steps: order })),
    { percent: 100, steps: clockwiseRound(boltCount) },
  ];
}

const asPass = (pass: ComputedPass, target_N: number): TighteningPass => ({
  steps: pass.steps.map(({ bolts, loads_N }) => ({
    bolts,
    load_percent: loads_N.map((load) => (load / target_N) * 100),
  })),
});

function statementOn(
  worthwhile: boolean,
  reached: boolean,
  { cap_N, target_N }: ComputedLoadsRequest,
  passes: number,
  { moves, turns }: { readonly moves: number; readonly turns: number },
  usualMoves: number,
): { readonly code: string; readonly message: string } {
  const cap = `${((cap_N / target_N) * 100).toFixed(0)} % of target`;
  if (worthwhile)
    return {
      code: 'computed-loads-save-moves',
      message: `${passes} passes with computed loads, ${moves} moves, against ${usualMoves} moves in the usual way; no step above ${cap}.`,
    };
  if (reached)
    return {
      code: 'computed-loads-save-nothing',
      message: `Computed loads under the cap of ${cap} need ${moves} moves and ${turns} settings of the tool, the usual way ${usualMoves} moves: keep conventional passes.`,
    };
  return {
    code: 'cap-leaves-nothing-to-gain',
    message: `The cap of ${cap} leaves too little room to over-tighten the first bolts: keep conventional passes.`,
  };
}
