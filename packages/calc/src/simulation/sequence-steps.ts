import { CalcRefusal, type RefusalItem, refuse } from '../refusal.ts';

/** Bolts (numbered clockwise from 1) tightened together, all to the load of the pass. */
export type PlainStep = readonly number[];

/** Bolts tightened together to loads of their own, percent of target. */
export interface LoadedStep {
  readonly bolts: readonly number[];
  /** One load for all, or one for each bolt. */
  readonly load_percent: number | readonly number[];
}

/** One pass over the joint. */
export interface TighteningPass {
  /** Share of the target for steps without a load of their own; 100 where not given. */
  readonly percent?: number;
  readonly steps: readonly (PlainStep | LoadedStep)[];
}

/** A step in the solver's terms: bolts from 0, loads as shares of the target. */
export interface SolverStep {
  readonly bolts: readonly number[];
  readonly shares: readonly number[];
}

/** Most steps of one simulation. */
export const MOST_STEPS = 20_000;
/** Most load that a step may ask for, percent of target. */
export const MOST_LOAD_PERCENT = 300;

const isPlain = (step: PlainStep | LoadedStep): step is PlainStep => Array.isArray(step);

/**
 * Brings passes to the solver's terms.
 * @throws CalcRefusal `no-steps`, `too-many-steps`, `bolt-not-of-this-joint`, `bolt-twice-in-a-step`,
 *   `loads-do-not-match-bolts`, `out-of-range`
 */
export function solverSteps(passes: readonly TighteningPass[], boltCount: number): readonly (readonly SolverStep[])[] {
  const count = passes.reduce((sum, pass) => sum + pass.steps.length, 0);
  if (count === 0) refuse('passes', 'no-steps', 'The sequence has no steps. Give at least one pass with one step.');
  if (count > MOST_STEPS)
    refuse(
      'passes',
      'too-many-steps',
      `The sequence has ${count} steps; at most ${MOST_STEPS} are simulated.`,
      MOST_STEPS,
    );
  const faults: RefusalItem[] = [];
  const steps = passes.map((pass, p) =>
    pass.steps.map((step, s) => oneStep(step, pass.percent ?? 100, boltCount, `passes.${p}.steps.${s}`, faults)),
  );
  if (faults.length > 0) throw new CalcRefusal(faults);
  return steps;
}

function oneStep(
  step: PlainStep | LoadedStep,
  passPercent: number,
  boltCount: number,
  path: string,
  faults: RefusalItem[],
): SolverStep {
  const bolts = isPlain(step) ? step : step.bolts;
  const load = isPlain(step) ? passPercent : step.load_percent;
  const loads = typeof load === 'number' ? bolts.map(() => load) : load;
  const fault = (code: string, message: string, limit?: number) =>
    faults.push(limit === undefined ? { path, code, message } : { path, code, message, limit });
  if (bolts.length === 0) fault('no-steps', 'A step has no bolts. Leave it out or name its bolts.');
  for (const bolt of bolts)
    if (!Number.isInteger(bolt) || bolt < 1 || bolt > boltCount)
      fault(
        'bolt-not-of-this-joint',
        `Bolt ${bolt} is not on this joint: its bolts are 1 to ${boltCount}, clockwise from the datum.`,
        boltCount,
      );
  if (new Set(bolts).size !== bolts.length)
    fault('bolt-twice-in-a-step', `A step names a bolt twice (${bolts.join(', ')}). Name each bolt once.`);
  if (loads.length !== bolts.length)
    fault(
      'loads-do-not-match-bolts',
      `A step has ${bolts.length} bolts and ${loads.length} loads. Give one load a bolt.`,
    );
  for (const percent of loads)
    if (!(percent > 0 && percent <= MOST_LOAD_PERCENT))
      fault(
        'out-of-range',
        `A load of ${percent} % is asked for; it must be above 0 and at most ${MOST_LOAD_PERCENT} % of target.`,
        MOST_LOAD_PERCENT,
      );
  return { bolts: bolts.map((bolt) => bolt - 1), shares: loads.map((percent) => percent / 100) };
}

/** Takes the bolts of a group one after another instead of together. */
export function oneByOne(steps: readonly (readonly number[])[]): readonly (readonly number[])[] {
  return steps.flatMap((step) => step.map((bolt) => [bolt]));
}

/** One clockwise round of every bolt. */
export function clockwiseRound(boltCount: number): readonly (readonly number[])[] {
  return Array.from({ length: boltCount }, (_, bolt) => [bolt + 1]);
}
