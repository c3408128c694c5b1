import type { ComputedLoadsRequest } from './computed-loads.ts';
import { type UniformPass, uniformPass } from './computed-pass.ts';
import { jointModel } from './joint-model.ts';
import { JointState } from './joint-state.ts';
import { withinLimit } from './passes-needed.ts';
import { type GroupedLoads, type GroupingWay, groupLoads, roundToDivision } from './set-values.ts';
import { type LoadStatistics, loadStatistics } from './simulate.ts';

/** Passes after which a plan is given up. */
const MOST_PASSES = 6;
const FEWER_TURNS = 2 / 3;

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

/** How often the tool is set to another value, the first setting of each pass included. */
export function turnsOf(passes: readonly ComputedPass[]): number {
  let turns = 0;
  for (const { steps } of passes) {
    let before: number | undefined;
    for (const load of steps.flatMap(({ loads_N }) => loads_N)) {
      if (load !== before) turns++;
      before = load;
    }
  }
  return turns;
}

/**
 * Values shared by loads alike fit best. Values shared by bolts in a row are set less often: where the tool is set a third
 * less often by that and no pass is added, that is better for the crew.
 */
export function bestPasses(...[request, ...rest]: DropLast<Parameters<typeof planPasses>>): readonly ComputedPass[] {
  const limit_percent = rest[3];
  const byValue = planPasses(request, ...rest, 'by-value');
  const inARow = planPasses(request, ...rest, 'in-a-row');
  const reaches = (plan: readonly ComputedPass[]) => {
    const end = plan.at(-1);
    return end !== undefined && withinLimit(end.simulated, limit_percent);
  };
  if (!reaches(inARow)) return byValue;
  if (!reaches(byValue)) return inARow;
  return inARow.length <= byValue.length && turnsOf(inARow) <= FEWER_TURNS * turnsOf(byValue) ? inARow : byValue;
}

type DropLast<T extends readonly unknown[]> = T extends readonly [...infer Start, unknown] ? Start : never;

function planPasses(
  { joint, target_N, cap_N, division_N, choices }: ComputedLoadsRequest,
  first: readonly (readonly number[])[],
  later: readonly (readonly number[])[],
  setValues: number,
  limit_percent: number,
  way: GroupingWay,
): readonly ComputedPass[] {
  const state = new JointState(jointModel(joint, choices), target_N);
  const scratch = state.clone();
  const passes: ComputedPass[] = [];
  let level = 0;
  while (passes.length < MOST_PASSES) {
    const steps = passes.length === 0 ? first : later;
    const next = highestLevel(state, steps, level, target_N, cap_N, scratch);
    const { group, values } = fitSetValues(state, scratch, steps, next, { cap_N, division_N, setValues, way });
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
  tool: { readonly cap_N: number; readonly division_N: number; readonly setValues: number; readonly way: GroupingWay },
): { readonly group: readonly number[]; readonly values: readonly number[] } {
  const { cap_N, division_N } = tool;
  const wanted = pass.loads.flat().map((load) => Math.min(load, cap_N));
  const grouped: GroupedLoads = groupLoads(wanted, tool.setValues, division_N, cap_N, tool.way);
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
