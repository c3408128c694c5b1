import { requireInRange } from '../checks.ts';
import { assemblyLoad } from '../torque/assembly-load.ts';

/** Limits of a joint that bound the load of a single step. */
export interface ToolCapRequest {
  readonly thread: string;
  readonly yield_MPa: number;
  /** Share of yield that the bolt may reach under tension and torsion together. */
  readonly utilisation: number;
  /** Friction in the thread while the nut turns; 0 for a tensioner, which does not twist the bolt. */
  readonly threadFriction: number;
  /** Half width of the tool's range, percent. */
  readonly scatter_percent: number;
  /** Bolt load at which the flange reaches its own limit, N. */
  readonly flangeLimit_N?: number;
  /** Highest stress that the gasket bears, with the area that all bolts press. */
  readonly gasketMaximum_MPa?: number;
  readonly gasketArea_mm2?: number;
  readonly boltCount?: number;
}

/** Highest load that a tool may be set to in a step. */
export interface ToolCap {
  readonly cap_N: number;
  readonly governedBy: 'bolt' | 'flange' | 'gasket';
}

/**
 * Highest set value of a single step: bolt under tension and torsion with the tool's scatter on top, flange,
 * and gasket. For B7M and low-strength bolting it is often no more than the target itself.
 *
 * The gasket limit is taken as if every bolt had the load; a single bolt above its neighbours presses the
 * gasket less than that on average, and the simulation shows its local peak.
 * Source: VDI 2230 for tension with torsion.
 * @throws CalcRefusal `out-of-range`, `unknown-thread`
 */
export function toolCap(request: ToolCapRequest): ToolCap {
  const { scatter_percent, flangeLimit_N, gasketMaximum_MPa, gasketArea_mm2, boltCount } = request;
  requireInRange([
    ['scatter_percent', scatter_percent, { min: 0, max: 60 }],
    ['flangeLimit_N', flangeLimit_N, { min: 0, open: true }],
    ['gasketMaximum_MPa', gasketMaximum_MPa, { min: 0, open: true }],
    ['gasketArea_mm2', gasketArea_mm2, { min: 0, open: true }],
    ['boltCount', boltCount, { min: 4 }],
  ]);
  const scatter = 1 + scatter_percent / 100;
  let cap: ToolCap = { cap_N: assemblyLoad(request).load_N / scatter, governedBy: 'bolt' };
  if (flangeLimit_N !== undefined && flangeLimit_N / scatter < cap.cap_N)
    cap = { cap_N: flangeLimit_N / scatter, governedBy: 'flange' };
  if (gasketMaximum_MPa !== undefined && gasketArea_mm2 !== undefined && boltCount !== undefined) {
    const gasket_N = (gasketMaximum_MPa * gasketArea_mm2) / boltCount / scatter;
    if (gasket_N < cap.cap_N) cap = { cap_N: gasket_N, governedBy: 'gasket' };
  }
  return cap;
}
