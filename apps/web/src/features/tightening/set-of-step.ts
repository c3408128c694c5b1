import type { ToolSetting } from '@seatwell/contract';
import type { RunningPass } from './draft.ts';
import type { TighteningPlan } from './pass-steps.ts';

export interface SetOfStep {
  readonly set: ToolSetting;
  /** the tool stands at another value from the step before */
  readonly changed: boolean;
  /** steps from this one on with the same value, this one included */
  readonly following: number;
}

/** What the tool is set to at a step: one value for a whole pass, or that of the step with computed loads. */
export function setOfStep(plan: TighteningPlan, running: RunningPass, step: number): SetOfStep {
  const values = running.kind === 'pass' ? plan.passes[running.pass - 1]?.setValueOf : undefined;
  const setAt = (index: number) => running.sets?.[values?.[index] ?? -1] ?? running.set;
  if (!values || !running.sets) return { set: running.set, changed: false, following: 0 };
  let following = 1;
  while (step + following < values.length && values[step + following] === values[step]) following++;
  return { set: setAt(step), changed: step === 0 || values[step - 1] !== values[step], following };
}
