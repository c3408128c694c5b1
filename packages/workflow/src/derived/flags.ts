import type { PunchCategory, ShutdownSettings } from '@seatwell/contract';
import type { ToolFacts } from '../context.ts';
import type { JointState, MakeState } from '../state.ts';
import { addHours, moment } from '../time.ts';
import { failedTools } from './failed-tools.ts';
import { temporaryFittingOf } from './makes.ts';

export type FlagCode =
  | 'on-hold'
  | 'part-tight'
  | 'rejected'
  | 'leaking'
  | 'retighten'
  | 'needs-review'
  | 'implausible'
  | 'provisional-tool'
  | 'tool-failed'
  | 'target-out-of-date'
  | 'relaxation-due'
  | 'relaxation-overdue'
  | 'temporary-fitting'
  | 'punch-A'
  | 'punch-B'
  | 'punch-C'
  | 'voided';

/** What the flags look at beside the joint itself; all of it as it is now. */
export interface FlagContext {
  readonly now: string;
  readonly settings: ShutdownSettings;
  readonly tools: Readonly<Record<string, ToolFacts>>;
  /** hash of the inputs of the target as they are now; null = no target or not computed */
  readonly targetInputsHashNow: string | null;
  readonly unclosedPunch: Readonly<Partial<Record<PunchCategory, number>>>;
}

export interface Flag {
  readonly code: FlagCode;
  readonly detail: string;
}

/** Whether the criticality or the procedure asks for a relaxation pass on this make. */
export function relaxationDemanded(joint: JointState, make: MakeState, settings: ShutdownSettings): boolean {
  const { family } = make.gasket ?? joint.specification.gasket;
  const elastomerBound = family === 'fibre-sheet' || family === 'elastomer';
  // Once hot, an elastomer-bound gasket is never retightened: nothing is due.
  if (elastomerBound && joint.specification.hotExposed) return false;
  return settings.criticalities[joint.criticality].relaxationPass || (make.procedure?.relaxationPass ?? false);
}

export interface RelaxationDue {
  readonly from: string;
  readonly overdueFrom: string;
}

/** When the relaxation pass of a tight make is due; null when none is, or it is done. */
export function relaxationDue(joint: JointState, make: MakeState, settings: ShutdownSettings): RelaxationDue | null {
  if (make.tightAt === null || make.relaxationDone || !relaxationDemanded(joint, make, settings)) return null;
  return {
    from: addHours(make.tightAt, settings.relaxationPassAfter_h),
    overdueFrom: addHours(make.tightAt, settings.relaxationPassOverdue_h),
  };
}

/** Provisional tools of the make whose certificate nobody has confirmed since. */
export function unclearedTools(make: MakeState, tools: Readonly<Record<string, ToolFacts>>): readonly string[] {
  return make.provisionalTools.filter((toolId) => {
    const provisional = tools[toolId]?.calibrations.filter((c) => c.provisional) ?? [];
    // A tool that nobody can show is not confirmed.
    return provisional.length === 0 || provisional.some((c) => c.clearedAt === null);
  });
}

/** What stands beside the stage of a make, derived from its state and from what is so now. */
export function flagsOf(joint: JointState, make: MakeState, context: FlagContext): readonly Flag[] {
  const flags: Flag[] = [];
  const raise = (code: FlagCode, detail: string) => flags.push({ code, detail });
  if (joint.voided) raise('voided', joint.voided.reason);
  for (const hold of joint.holds) raise('on-hold', `${hold.reason} (${hold.releasedBy} releases)`);
  if (make.stage === 'part-tight') {
    const restart = make.partTight?.restartPass ?? make.nextPass;
    raise('part-tight', make.partTight?.why ?? `goes on with pass ${restart}`);
  }
  if (make.rejected) raise('rejected', 'the check was rejected');
  if (make.leaking) raise('leaking', make.underPressure ? 'leaks, under pressure' : 'leaks');
  if (make.retighten) raise('retighten', 'all bolts were loosened; the gasket is used');
  for (const waiting of make.waiting) raise('needs-review', `${waiting.type}: ${waiting.codes.join(', ')}`);
  if (make.implausible.length > 0) raise('implausible', make.implausible.join(', '));
  const uncleared = unclearedTools(make, context.tools);
  const tagged = (ids: readonly string[]) => ids.map((id) => context.tools[id]?.tag ?? id).join(', ');
  if (uncleared.length > 0) raise('provisional-tool', tagged(uncleared));
  const failed = failedTools(make, context.tools);
  if (failed.length > 0) raise('tool-failed', tagged(failed));
  if (make.target && context.targetInputsHashNow && context.targetInputsHashNow !== make.target.inputsHash)
    raise('target-out-of-date', 'an input of the calculation has changed since the target was approved');
  const due = relaxationDue(joint, make, context.settings);
  if (due && moment(context.now) >= moment(due.overdueFrom)) raise('relaxation-overdue', `since ${due.overdueFrom}`);
  else if (due) raise('relaxation-due', `from ${due.from}`);
  const temporary = temporaryFittingOf(joint);
  if (temporary?.makeId === make.makeId)
    raise('temporary-fitting', temporary.gasket ? 'temporary gasket' : 'temporary bolts');
  for (const category of ['A', 'B', 'C'] as const) {
    const count = context.unclosedPunch[category] ?? 0;
    if (count > 0) raise(`punch-${category}`, `${count} unclosed`);
  }
  return flags;
}
