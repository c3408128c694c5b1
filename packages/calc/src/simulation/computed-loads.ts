import { requireInRange } from '../checks.ts';
import { checkJoint } from './check-joint.ts';
import { type UniformPass, uniformPass } from './computed-pass.ts';
import { jointModel, type SimulationJoint, type SolverChoices } from './joint-model.ts';
import { JointState } from './joint-state.ts';
import { type PassesNeeded, passesNeeded, withinLimit } from './passes-needed.ts';
import { clockwiseRound, solverSteps, type TighteningPass } from './sequence-steps.ts';
import { type GroupedLoads, groupLoads, roundToDivision } from './set-values.ts';
import { type LoadStatistics, loadStatistics } from './simulate.ts';

/** Passes after which a plan is given up. */
const MOST_PASSES = 6;
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
  readonly choices?: SolverChoices;
}

/** A pass of a plan: what the crew sets. */
export interface ComputedPass {
  /** Set values in use, rising, N. */
  readonly setValues_N: readonly number[];
  /** Load of all bolts that the pass aims at, percent of target. */
  readonly level_percent: number;
  readonly steps: readonly { readonly bolts: readonly number[]; readonly loads_N: readonly number[] }[];
  /** Loads after the pass, simulated with the set values as rounded. */
  readonly simulated: LoadStatistics;
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
  const { joint, target_N, cap_N, division_N, setValues = 4, limit_percent = 10 } = request;
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
  const passes = cap_N < LEAST_CAP * target_N ? [] : planPasses(request, first!, then!, setValues, limit_percent);
  const final = passes.at(-1)?.simulated;
  const moves = passes.reduce((sum, pass) => sum + pass.steps.flatMap((step) => step.bolts).length, 0);
  const usualPassCount = usual.length + (conventional.extraRounds ?? 0);
  const reached = final !== undefined && withinLimit(final, limit_percent);
  const usualReached = withinLimit(conventional.final, limit_percent);
  const worthwhile = reached && (moves < conventional.moves || !usualReached);
  return {
    worthwhile,
    statement: statementOn(worthwhile, reached, request, passes.length, moves, conventional.moves),
    passes: worthwhile ? passes : [],
    sequence: worthwhile ? passes.map((pass) => asPass(pass, target_N)) : [],
    final: worthwhile ? final : undefined,
    moves: worthwhile ? moves : conventional.moves,
    conventional,
    movesSaved: worthwhile ? conventional.moves - moves : 0,
    passesSaved: worthwhile ? usualPassCount - passes.length : 0,
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
  moves: number,
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
      message: `Computed loads under the cap of ${cap} need ${moves} moves, the usual way ${usualMoves}: keep conventional passes.`,
    };
  return {
    code: 'cap-leaves-nothing-to-gain',
    message: `The cap of ${cap} leaves too little room to over-tighten the first bolts: keep conventional passes.`,
  };
}

function planPasses(
  { joint, target_N, cap_N, division_N, choices }: ComputedLoadsRequest,
  first: readonly (readonly number[])[],
  later: readonly (readonly number[])[],
  setValues: number,
  limit_percent: number,
): readonly ComputedPass[] {
  const state = new JointState(jointModel(joint, choices), target_N);
  const scratch = state.clone();
  const passes: ComputedPass[] = [];
  let level = 0;
  while (passes.length < MOST_PASSES) {
    const steps = passes.length === 0 ? first : later;
    const next = highestLevel(state, steps, level, target_N, cap_N, scratch);
    const { group, values } = fitSetValues(state, scratch, steps, next, { cap_N, division_N, setValues });
    let k = 0;
    const planned = steps.map((bolts) => ({
      bolts: bolts.map((bolt) => bolt + 1),
      loads_N: bolts.map(() => values[group[k++]!]!),
    }));
    steps.forEach((bolts, step) => {
      state.tighten(bolts, planned[step]!.loads_N);
    });
    state.correct();
    const simulated = loadStatistics(state.loads, target_N);
    level = next.level;
    passes.push({
      setValues_N: [...new Set(group.map((g) => values[g]!))].sort((a, b) => a - b),
      level_percent: level * 100,
      steps: planned,
      simulated,
    });
    if (withinLimit(simulated, limit_percent / 2)) break;
    if (level >= 1 && passes.length > 1 && withinLimit(passes.at(-2)!.simulated, limit_percent)) break;
  }
  return passes;
}

interface LevelledPass extends UniformPass {
  /** Share of the target that every bolt ends at. */
  readonly level: number;
}

function highestLevel(
  state: JointState,
  steps: readonly (readonly number[])[],
  from: number,
  target_N: number,
  cap_N: number,
  scratch: JointState,
): LevelledPass {
  const at = (level: number) => ({ ...uniformPass(state, steps, level * target_N, scratch), level });
  const full = at(1);
  if (full.highest <= cap_N) return full;
  let low = Math.max(from, 0.1);
  let high = 1;
  let best: LevelledPass | undefined;
  for (let halving = 0; halving < 7; halving++) {
    const pass = at((low + high) / 2);
    if (pass.highest <= cap_N) {
      best = pass;
      low = pass.level;
    } else high = pass.level;
  }
  // Near the target the cap may hold back only a few bolts: they take the cap.
  return best !== undefined && best.level > from + 0.02 ? best : full;
}

// Groups and rounds, then moves each set value by divisions while that brings the end closer to uniform.
function fitSetValues(
  state: JointState,
  scratch: JointState,
  steps: readonly (readonly number[])[],
  pass: LevelledPass,
  tool: { readonly cap_N: number; readonly division_N: number; readonly setValues: number },
): { readonly group: readonly number[]; readonly values: readonly number[] } {
  const { cap_N, division_N } = tool;
  const wanted = pass.loads.flat().map((load) => Math.min(load, cap_N));
  const grouped: GroupedLoads = groupLoads(wanted, tool.setValues, division_N, cap_N);
  const level_N = pass.level * scratch.reference_N;
  const departure = (values: readonly number[]) => {
    scratch.copyFrom(state);
    let k = 0;
    for (const bolts of steps)
      scratch.tighten(
        bolts,
        bolts.map(() => values[grouped.group[k++]!]!),
      );
    let largest = 0;
    for (const load of scratch.loads) largest = Math.max(largest, Math.abs(load - level_N));
    return largest;
  };
  let values = [...grouped.values];
  let best = departure(values);
  for (let stride = 4; stride >= 1; stride = Math.floor(stride / 2)) {
    for (let k = 0; k < values.length; k++)
      for (const sign of [1, -1]) {
        const trial = values.map((value, i) =>
          i === k ? roundToDivision(value + sign * stride * division_N, division_N, cap_N) : value,
        );
        const found = departure(trial);
        if (found >= best) continue;
        best = found;
        values = trial;
      }
  }
  return { group: grouped.group, values };
}
