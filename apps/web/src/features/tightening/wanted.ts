import type { TargetEvidence } from '@seatwell/workflow';

export interface Wanted {
  readonly percent: number;
  readonly torque_Nm: number | null;
  readonly pressure_MPa: number | null;
}

/** What the target gives for a pass; final round and relaxation pass take the value of the last pass. */
export function wantedOf(target: Pick<TargetEvidence, 'passes'> | null, pass: number): Wanted | null {
  if (!target || target.passes.length === 0) return null;
  return target.passes[Math.min(pass, target.passes.length) - 1] ?? null;
}
