import type { FlagCode } from '@seatwell/workflow';

/** Flags that the register can be narrowed down to. */
export const FLAGS_OFFERED = [
  'part-tight',
  'leaking',
  'rejected',
  'on-hold',
  'needs-review',
  'implausible',
  'retighten',
  'provisional-tool',
  'target-out-of-date',
  'relaxation-due',
  'temporary-fitting',
  'punch-A',
  'punch-B',
  'punch-C',
] as const satisfies readonly FlagCode[];
