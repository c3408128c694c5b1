import type { ComputedPass, MakeState } from './state.ts';

/** The passes of computed loads; null where the joint is tightened by its procedure. */
export function computedPasses({ target }: Pick<MakeState, 'target'>): readonly ComputedPass[] | null {
  const plan = target?.tightening;
  return plan?.way === 'computed-loads' ? plan.passes : null;
}

/** Number of passes before the final round: of the computed loads where the engineer chose them, else of the procedure. */
export function passCountOf(make: Pick<MakeState, 'target' | 'procedure'>): number {
  return computedPasses(make)?.length ?? make.procedure?.passCount ?? 0;
}
