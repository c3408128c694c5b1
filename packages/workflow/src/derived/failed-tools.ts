import type { ToolFacts } from '../context.ts';
import type { MakeState } from '../state.ts';

const dayOfInstant = (instant: string): string => instant.slice(0, 10);

/** The first day from which a failed tool is in doubt: that of its last good calibration; '' = it never had one. */
function inDoubtFrom({ calibrations, failedOn }: ToolFacts): string {
  const good = calibrations
    .filter((each) => !each.provisional || each.clearedAt !== null)
    .map((each) => each.calibratedOn)
    .filter((day) => failedOn !== null && day <= failedOn);
  return good.sort().at(-1) ?? '';
}

/** The last day on which a failed tool was in doubt: that of the finding, once it was calibrated anew. */
function inDoubtThrough({ calibrations, failedOn }: ToolFacts): string {
  const anew = calibrations.some(
    (each) => failedOn !== null && each.calibratedOn > failedOn && (!each.provisional || each.clearedAt !== null),
  );
  return anew && failedOn !== null ? failedOn : '9999-12-31';
}

/** When a tool last worked on the bolts as they are tightened now. */
function workedAt(make: MakeState, toolId: string): readonly string[] {
  // A pass that was made again stands for the one before it.
  const latest = new Map(make.passes.map((pass) => [pass.pass, pass]));
  if (make.passes.some((pass) => pass.toolId === toolId))
    return [...latest.values()].filter((pass) => pass.toolId === toolId).map((pass) => pass.endedAt);
  // A pump, a gauge, or a wrench of the final round or the relaxation pass: any of the work may be its.
  return [...make.passes.map((pass) => pass.endedAt), ...(make.tightAt === null ? [] : [make.tightAt])];
}

/**
 * Tools that were found wrong and tightened this make since their last good calibration: the make is to be looked at.
 * The day of the calibration itself counts as in doubt, since the record does not say at what hour it was made.
 * @param tools the tools used on the make, as they are now
 * @returns ids, in the order in which the tools came to be used
 */
export function failedTools(make: MakeState, tools: Readonly<Record<string, ToolFacts>>): readonly string[] {
  return make.toolsUsed.filter((toolId) => {
    const tool = tools[toolId];
    if (!tool || tool.failedOn === null) return false;
    const [from, through] = [inDoubtFrom(tool), inDoubtThrough(tool)];
    return workedAt(make, toolId).some((at) => dayOfInstant(at) >= from && dayOfInstant(at) <= through);
  });
}
