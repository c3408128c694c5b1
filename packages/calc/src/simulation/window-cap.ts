import type { TargetAnswer } from '../target/request.ts';

/** Highest load of a single step that a joint's own window allows. */
export interface WindowCap {
  readonly cap_N: number;
  /** Percent of target. */
  readonly percent: number;
  /** Name of the limit of the window. */
  readonly governedBy: string;
}

/** Beyond this share of target a step is not loaded, whatever the window allows. */
export const WINDOW_CAP_LIMITS = { most: 1.6 } as const;

/**
 * Cap of a single step from the upper limits of a target's window: bolt with torsion, scatter and grade, gasket, flange.
 *
 * Limits that do not hold the tool's scatter are lowered by it. Advisory limits do not bound.
 */
export function windowCap({ window, target, spread }: Pick<TargetAnswer, 'window' | 'target' | 'spread'>): WindowCap {
  const scatter = spread.high_MPa / target.boltStress_MPa;
  const binding = window.upper
    .filter(({ advisory }) => advisory !== true)
    .map(({ name, boltStress_MPa, scatterIncluded }) => ({
      governedBy: name,
      share: boltStress_MPa / (scatterIncluded === true ? 1 : scatter) / target.boltStress_MPa,
    }))
    .reduce((least, limit) => (limit.share < least.share ? limit : least), {
      governedBy: 'most',
      share: WINDOW_CAP_LIMITS.most as number,
    });
  return { cap_N: binding.share * target.boltLoad_N, percent: binding.share * 100, governedBy: binding.governedBy };
}
