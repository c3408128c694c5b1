import { CalcRefusal, tighteningSequence } from '@seatwell/calc';
import { computedPasses, type JointState, type MakeState, type ProcedureFacts } from '@seatwell/workflow';

/**
 * How many bolts the procedure's pattern visits in one pass: some patterns begin with a few bolts only. Computed loads
 * and the groups of a tensioner visit every bolt.
 * @returns null where the pattern or the bolt count is not known: then every bolt counts
 */
export function boltsInPass(
  joint: JointState,
  make: MakeState,
  procedure: ProcedureFacts | null,
  pass: number | undefined,
): number | null {
  if (!procedure || !joint.bolting || pass === undefined || computedPasses(make)) return null;
  if (make.target?.tensioning) return null;
  const { pattern, group, tools, passPercents, numbering } = procedure.content;
  try {
    const sequence = tighteningSequence({
      boltCount: joint.bolting.count,
      pattern,
      tools,
      ...(group === null ? {} : { group }),
      passPercents,
      numbering,
    });
    const steps = sequence.passes.filter((each) => each.kind === 'pattern')[pass - 1]?.steps;
    return steps ? new Set(steps.flat()).size : null;
  } catch (error) {
    if (error instanceof CalcRefusal) return null;
    throw error;
  }
}
