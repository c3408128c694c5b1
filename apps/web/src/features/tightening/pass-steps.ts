import { type BoltPosition, tighteningSequence } from '@seatwell/calc';
import type { ProcedureContent } from '@seatwell/contract';
import type { ComputedPass, Tensioning } from '@seatwell/workflow';

/** Bolts in labels of the procedure's numbering, tightened one after another or at once. */
export type BoltStep = readonly number[];

export interface PassPlan {
  /** share of the target, percent */
  readonly percent: number;
  readonly steps: readonly BoltStep[];
  /** of computed loads and of the groups of a tensioner: which of the set values of the pass each step takes, rising from 0 */
  readonly setValueOf?: readonly number[];
}

export interface TighteningPlan {
  /** the passes as they are recorded: as many as the procedure has percents, or as the computed loads have */
  readonly passes: readonly PassPlan[];
  /** the clockwise round of the final round and of the relaxation pass */
  readonly round: PassPlan;
  readonly positions: readonly BoltPosition[];
  /** the bolts of a step are tightened at the same time */
  readonly atOnce: boolean;
  /** the steps are the groups of a tensioner */
  readonly byGroups?: boolean;
}

/**
 * The steps of every pass of a procedure on a joint, in the numbers that are chalked on the flange. Patterns that
 * visit some bolts at 100 % before the round of all of them are recorded as one last pass.
 * @throws CalcRefusal where the procedure does not fit the bolt count
 */
export function tighteningPlan(content: ProcedureContent, boltCount: number): TighteningPlan {
  const sequence = tighteningSequence({
    boltCount,
    pattern: content.pattern,
    numbering: content.numbering,
    passPercents: content.passPercents,
    ...(content.group !== null && content.group > 1 ? { group: content.group } : {}),
    ...(content.tools > 1 ? { tools: content.tools } : {}),
  });
  const pattern = sequence.passes.filter((pass) => pass.kind === 'pattern');
  const round = sequence.passes.find((pass) => pass.kind === 'final-round');
  const last = content.passPercents.length - 1;
  return {
    passes: content.passPercents.map((percent, index) => ({
      percent,
      steps: index < last ? (pattern[index]?.steps ?? []) : pattern.slice(last).flatMap((pass) => pass.steps),
    })),
    round: { percent: 100, steps: round?.steps ?? [] },
    positions: sequence.positions,
    atOnce: content.tools > 1,
  };
}

/** The same flange with the passes of computed loads: one bolt after another, each with its set value. */
export function withComputedPasses(plan: TighteningPlan, computed: readonly ComputedPass[]): TighteningPlan {
  const labels = new Map(plan.positions.map(({ label, clockwiseIndex }) => [clockwiseIndex, label]));
  return {
    ...plan,
    atOnce: false,
    passes: computed.map(({ level_percent, steps }) => ({
      percent: level_percent,
      steps: steps.map(({ bolt }) => [labels.get(bolt) ?? bolt]),
      setValueOf: steps.map(({ setValue }) => setValue),
    })),
  };
}

/** The different pressures of a tensioner's pass, rising. */
export const pressuresOf = ({ groupPressures_MPa }: Tensioning['passes'][number]): readonly number[] =>
  [...new Set(groupPressures_MPa)].sort((a, b) => a - b);

/** The same flange by a tensioner: every group is one step with its own pressure; the rounds after go group by group. */
export function withTensioningGroups(plan: TighteningPlan, { groups, passes }: Tensioning): TighteningPlan {
  const labels = new Map(plan.positions.map(({ label, clockwiseIndex }) => [clockwiseIndex, label]));
  const steps = groups.map((group) => group.map((place) => labels.get(place) ?? place));
  return {
    ...plan,
    atOnce: true,
    byGroups: true,
    passes: passes.map((pass) => {
      const rising = pressuresOf(pass);
      return {
        percent: pass.percent,
        steps,
        setValueOf: pass.groupPressures_MPa.map((pressure_MPa) => rising.indexOf(pressure_MPa)),
      };
    }),
    round: { percent: 100, steps },
  };
}

/** Number of different bolts in the first steps. */
export function boltsIn(steps: readonly BoltStep[], done = steps.length): number {
  return new Set(steps.slice(0, done).flat()).size;
}

/** Label of the bolt that was done last; null when none was. */
export function lastBoltOf(steps: readonly BoltStep[], done: number): number | null {
  return steps.slice(0, done).at(-1)?.at(-1) ?? null;
}
