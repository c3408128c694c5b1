import { type SequenceRequest, type TighteningSequence, tighteningSequence } from '@seatwell/calc';
import type { ProcedureContent } from '@seatwell/contract';
import type { MakeState, PlanBolt } from '@seatwell/workflow';

/** The sequence that a procedure gives for a count of bolts; undefined where the pattern does not take that count. */
export function sequenceOf(content: ProcedureContent, boltCount: number): TighteningSequence | undefined {
  const request: SequenceRequest = {
    boltCount,
    pattern: content.pattern,
    numbering: content.numbering,
    tools: content.tools,
    ...(content.group === null ? {} : { group: content.group }),
    passPercents: content.passPercents,
    relaxation: content.relaxationPass,
  };
  try {
    return tighteningSequence(request);
  } catch {
    // The reason stands where the procedure is chosen; here the bolts are numbered clockwise.
    return undefined;
  }
}

/** The bolts of the plan, numbered as the procedure agreed, each filled by the passes recorded on it. */
export function planBolts(
  boltCount: number,
  sequence: TighteningSequence | undefined,
  state: (Pick<MakeState, 'passes' | 'nextPass' | 'stage'> & Partial<Pick<MakeState, 'target'>>) | undefined,
): PlanBolt[] {
  const positions =
    sequence?.positions ??
    Array.from({ length: boltCount }, (_, index) => ({ label: index + 1, clockwiseIndex: index + 1 }));
  const finished = finishedPasses(state);
  const last = state?.passes.at(-1);
  const interrupted = last && !last.finished ? last : undefined;
  // Computed loads go round by place.
  const byPlace = state?.target?.tightening?.way === 'computed-loads';
  const labelAt = new Map(positions.map(({ label, clockwiseIndex }) => [clockwiseIndex, label]));
  const byGroup = state?.target?.tensioning?.groups.flat().map((place) => labelAt.get(place) ?? place);
  const order = byPlace ? undefined : sequence?.passes[(interrupted?.pass ?? 1) - 1]?.steps.flat();
  const inOrder = byGroup ?? order ?? positions.map(({ label }) => label);
  const begun = new Set(interrupted ? inOrder.slice(0, interrupted.boltsDone) : []);
  return positions.map(({ label, clockwiseIndex }) => ({
    label,
    clockwiseIndex,
    passesDone: finished + (begun.has(label) ? 1 : 0),
  }));
}

/** Passes that every bolt has had in this state. */
export function finishedPasses(state: Pick<MakeState, 'nextPass' | 'stage'> | undefined): number {
  if (!state) return 0;
  return Math.max(0, state.nextPass - 1);
}
