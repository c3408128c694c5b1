import type { PlanBolt } from '@seatwell/workflow';
import type { RunningPass } from './draft.ts';
import type { BoltStep, TighteningPlan } from './pass-steps.ts';

/** The bolts of the drawing: filled by the passes done, with those marked that are tightened now and next. */
export function planBolts(plan: TighteningPlan, steps: readonly BoltStep[], running: RunningPass): readonly PlanBolt[] {
  const passCount = plan.passes.length;
  const before = running.kind === 'pass' ? running.pass - 1 : passCount;
  const done = new Set(steps.slice(0, running.stepsDone).flat());
  const now = steps[running.stepsDone] ?? [];
  const next = steps[running.stepsDone + 1] ?? [];
  return plan.positions.map(({ label, clockwiseIndex }) => ({
    label,
    clockwiseIndex,
    passesDone: before + (done.has(label) ? 1 : 0),
    state: now.includes(label) ? 'now' : next.includes(label) ? 'next' : undefined,
  }));
}
