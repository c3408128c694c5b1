import type { RunningPass, WaitingFact } from './draft.ts';
import { type BoltStep, boltsIn, lastBoltOf } from './pass-steps.ts';

interface Said {
  readonly eventId: string;
  readonly at: string;
  readonly clockOffset_ms: number;
}

const shared = (running: RunningPass, { at }: Said) => ({
  set: running.set,
  tools: running.tools,
  startedAt: running.startedAt,
  endedAt: at,
});

const waiting = (running: RunningPass, said: Said) => ({
  eventId: said.eventId,
  at: said.at,
  clockOffset_ms: said.clockOffset_ms,
  performedBy: running.performedBy,
  alreadyDone: false,
});

/** The pass went round to its end. */
export function finishedPass(running: RunningPass, steps: readonly BoltStep[], said: Said): WaitingFact {
  return {
    ...waiting(running, said),
    type: 'pass-recorded',
    payload: {
      ...shared(running, said),
      pass: running.pass,
      outcome: 'finished',
      lastBolt: null,
      boltsDone: boltsIn(steps),
      why: null,
      gapsChecked_mm: running.gaps_mm === null ? null : [...running.gaps_mm],
    },
  };
}

/** The pass was left: with the last bolt done and why. */
export function interruptedPass(
  running: RunningPass,
  steps: readonly BoltStep[],
  why: string,
  said: Said,
): WaitingFact {
  return {
    ...waiting(running, said),
    type: 'pass-recorded',
    payload: {
      ...shared(running, said),
      pass: running.pass,
      outcome: 'interrupted',
      lastBolt: lastBoltOf(steps, running.stepsDone),
      boltsDone: boltsIn(steps, running.stepsDone),
      why,
      gapsChecked_mm: running.gaps_mm === null ? null : [...running.gaps_mm],
    },
  };
}

/** Round and round at the full value until no nut moved. */
export function finalRound(running: RunningPass, said: Said): WaitingFact {
  return {
    ...waiting(running, said),
    type: 'final-round-recorded',
    payload: { ...shared(running, said), rounds: running.rounds, nutMoved: false },
  };
}

export function relaxationPass(running: RunningPass, nutsMoved: number, said: Said): WaitingFact {
  return {
    ...waiting(running, said),
    type: 'relaxation-pass-recorded',
    payload: { ...shared(running, said), nutsMoved },
  };
}
