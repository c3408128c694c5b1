import type { ShutdownPayload, ToolSetting } from '@seatwell/contract';

/** What is tightened: a pass of the procedure, the final round, or the relaxation pass. */
export type RoundKind = 'pass' | 'final-round' | 'relaxation';

export interface ToolsUsed {
  readonly toolId: string;
  readonly pumpId: string | null;
  readonly gaugeId: string | null;
}

/** A pass that is being made: taps on the device, not yet an event. */
export interface RunningPass {
  readonly kind: RoundKind;
  /** 1-based; passCount + 1 stands for the final round */
  readonly pass: number;
  readonly stepsDone: number;
  /** rounds of the final round, this one included */
  readonly rounds: number;
  readonly startedAt: string;
  readonly performedBy: readonly string[];
  readonly tools: ToolsUsed;
  /** what is recorded: of computed loads the highest value */
  readonly set: ToolSetting;
  /** of computed loads: every set value of the pass, rising */
  readonly sets?: readonly ToolSetting[];
  readonly gaps_mm: readonly number[] | null;
}

type FactType = 'pass-recorded' | 'final-round-recorded' | 'relaxation-pass-recorded';

/** A fact that was said to be done and has not reached the record yet; its id stays the same at every try. */
export interface WaitingFact {
  readonly eventId: string;
  readonly type: FactType;
  readonly payload: ShutdownPayload<FactType>;
  readonly performedBy: readonly string[];
  readonly at: string;
  /** as measured when it was said: a repeat under the same id must be the same to the letter */
  readonly clockOffset_ms: number;
  readonly alreadyDone: boolean;
}

/** Taps on this device, and what is offered again. */
export interface Taps {
  readonly v: 2;
  readonly running: RunningPass | null;
  /** offered again for the next pass */
  readonly lastPerformedBy: readonly string[];
  readonly lastTools: ToolsUsed | null;
}

/** What the device keeps of the tightening of one make: the taps, and what the outbox has still to send. */
export interface TighteningDraft extends Taps {
  readonly waiting: readonly WaitingFact[];
}

export const noTaps: Taps = {
  v: 2,
  running: null,
  lastPerformedBy: [],
  lastTools: null,
};

export type DraftAction =
  | { readonly kind: 'begin'; readonly running: RunningPass }
  | { readonly kind: 'step-done'; readonly stepCount: number }
  | { readonly kind: 'undo' }
  | { readonly kind: 'round-again' }
  | { readonly kind: 'drop' };

const withRunning = (draft: Taps, change: (running: RunningPass) => RunningPass): Taps =>
  draft.running ? { ...draft, running: change(draft.running) } : draft;

/** The next state of the taps; what makes no sense changes nothing. */
export function reduceTaps(draft: Taps, action: DraftAction): Taps {
  switch (action.kind) {
    case 'begin':
      return {
        ...draft,
        running: action.running,
        lastPerformedBy: action.running.performedBy,
        lastTools: action.running.tools,
      };
    case 'step-done':
      return withRunning(draft, (running) => ({
        ...running,
        stepsDone: Math.min(action.stepCount, running.stepsDone + 1),
      }));
    case 'undo':
      return withRunning(draft, (running) => ({ ...running, stepsDone: Math.max(0, running.stepsDone - 1) }));
    case 'round-again':
      return withRunning(draft, (running) => ({ ...running, stepsDone: 0, rounds: running.rounds + 1 }));
    case 'drop':
      return { ...draft, running: null };
  }
}

export interface Position {
  readonly kind: RoundKind;
  readonly pass: number;
  /** the pass was begun and left: it is repeated from its first bolt */
  readonly repeats: boolean;
}

/**
 * What is to be tightened next: where the record stands, and on top of it what this device has still to send.
 * @param recorded where the record says that tightening begins or goes on; null = not to be tightened now
 * @returns null when nothing is left to tighten
 */
export function nextPosition(
  recorded: { readonly pass: number; readonly finalRound: boolean; readonly repeats: boolean } | null,
  waiting: readonly WaitingFact[],
  procedure: { readonly passCount: number; readonly finalRound: boolean },
): Position | null {
  const last = waiting.at(-1);
  if (!last) {
    if (!recorded) return null;
    return { kind: recorded.finalRound ? 'final-round' : 'pass', pass: recorded.pass, repeats: recorded.repeats };
  }
  if (last.type !== 'pass-recorded') return null;
  const { pass, outcome } = last.payload as ShutdownPayload<'pass-recorded'>;
  if (outcome === 'interrupted') return { kind: 'pass', pass, repeats: true };
  if (pass < procedure.passCount) return { kind: 'pass', pass: pass + 1, repeats: false };
  return procedure.finalRound ? { kind: 'final-round', pass: pass + 1, repeats: false } : null;
}
