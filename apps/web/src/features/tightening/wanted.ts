import { computedPasses, type MakeState } from '@seatwell/workflow';
import type { Position } from './draft.ts';
import { pressuresOf } from './pass-steps.ts';

export interface Wanted {
  readonly percent: number;
  readonly torque_Nm: number | null;
  readonly pressure_MPa: number | null;
  /** where the bolts are stretched to a length */
  readonly elongation_mm?: number | undefined;
}

/**
 * What the target gives for a round, rising: one value, the few of a pass with computed loads, or those of the groups
 * of a tensioner. Final round and
 * relaxation pass take the full value.
 */
export function wantedOf(
  make: Pick<MakeState, 'target'>,
  { kind, pass }: Pick<Position, 'kind' | 'pass'>,
): readonly Wanted[] {
  const computed = kind === 'pass' ? computedPasses(make)?.[pass - 1] : undefined;
  if (computed) {
    const { level_percent: percent, setValues_Nm } = computed;
    return setValues_Nm.map((torque_Nm) => ({ percent, torque_Nm, pressure_MPa: null }));
  }
  const { tensioning } = make.target ?? {};
  const tensioned = kind === 'pass' ? (tensioning?.passes[pass - 1] ?? tensioning?.passes.at(-1)) : undefined;
  if (tensioned) {
    const { percent } = tensioned;
    return pressuresOf(tensioned).map((pressure_MPa) => ({ percent, torque_Nm: null, pressure_MPa }));
  }
  const passes = make.target?.passes ?? [];
  const wanted = kind === 'pass' ? (passes[pass - 1] ?? passes.at(-1)) : passes.at(-1);
  return wanted ? [wanted] : [];
}
