import type { CountsByStage } from '@seatwell/contract';

/** Joints of a group in three steps: begun (nipped up or part tight), tight, checked or beyond. */
export interface Progress {
  readonly begun: number;
  readonly tight: number;
  readonly checked: number;
}

export function progressOf(counts: CountsByStage): Progress {
  return {
    begun: counts['nipped-up'] + counts['part-tight'],
    tight: counts.tight,
    checked: counts.checked + counts.proven + counts['handed-over'],
  };
}
