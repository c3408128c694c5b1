import { refuse } from '../refusal.ts';
import { type TensioningPlan, type TensioningPlanRequest, tensioningPlan } from '../tensioner/tensioning-plan.ts';
import { resolveJoint } from './joint.ts';
import type { TargetRequest } from './request.ts';

type ToolAndJoint = Pick<TensioningPlanRequest, 'coverage' | 'toolMaximumPressure_MPa' | 'gaugeDivision_MPa' | 'joint'>;

/**
 * The tensioning plan of a target: bolts, strength and effective length are those that the target was calculated with.
 *
 * @param request the target's own request; `clampedParts` and `tool.hydraulicArea_mm2` must be given
 * @param residualLoad_N bolt load of the target
 * @param more what the target does not know: coverage, limits of tool and gauge, the joint for the simulation
 * @throws CalcRefusal `tensioner-data-missing`, those of `tensioningPlan` and of the target's look-ups
 */
export function targetTensioning(request: TargetRequest, residualLoad_N: number, more: ToolAndJoint): TensioningPlan {
  const { thread, count, yield_MPa, effectiveLength_mm } = resolveJoint(request);
  const hydraulicArea_mm2 = request.tool?.hydraulicArea_mm2;
  if (effectiveLength_mm === undefined || hydraulicArea_mm2 === undefined) {
    const path = effectiveLength_mm === undefined ? 'clampedParts' : 'tool.hydraulicArea_mm2';
    refuse(path, 'tensioner-data-missing', `Tool load and pressure of a tensioner need ${path}.`);
  }
  return tensioningPlan({
    ...more,
    thread,
    boltCount: count,
    residualLoad_N,
    effectiveLength_mm,
    hydraulicArea_mm2,
    yield_MPa,
    passPercents: request.passPercents ?? [100],
  });
}
