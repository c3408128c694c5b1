import { refuse } from '../refusal.ts';
import { torsionFactor } from '../torque/assembly-load.ts';
import { show, type WorkingStep } from '../working.ts';
import type { Joint } from './joint.ts';
import { limitList } from './limit-list.ts';
import type { TargetRequest, WindowLimit } from './request.ts';
import type { ThermalChange } from './thermal.ts';

const JCM = 'ASME PCC-1 joint component method';
const scatterIncluded = { scatterIncluded: true } as const;
const full = { gasketWidth: 'full' } as const;

/** Every upper limit of the bolt stress but those that the flange's own dimensions set (flangeCapacity). */
export function upperLimits(
  input: TargetRequest,
  joint: Joint,
  thermal: ThermalChange | undefined,
  steps: WorkingStep[] | undefined,
): readonly WindowLimit[] {
  const { policy, flange } = input;
  const toArea = joint.tensileArea_mm2 / joint.area_mm2;
  const torsion = joint.torsion ? torsionFactor(joint.thread, joint.threadFriction) : 1;
  const { limits, add } = limitList('upper', input.area, steps);
  const yield_MPa = joint.yield_MPa * toArea;
  const overYield = torsion * (1 + joint.scatter);
  const crush_MPa = (joint.limits.maximum_MPa * joint.gasketArea_mm2) / (joint.area_mm2 * joint.count);
  const yieldSource = `VDI 2230 torsion; scatter: ${joint.scatterSource}; ${joint.yieldSource}`;
  const gasketSource = `${JCM}; gasket: ${joint.limits.source}`;
  const overYieldText = () => `(${show(torsion)} × (1 + ${show(joint.scatter)}))`;
  const crushText = () =>
    `${show(joint.limits.maximum_MPa)} × ${show(joint.gasketArea_mm2)} / (${show(joint.area_mm2)} × ${joint.count})`;

  add({
    name: 'bolt-maximum',
    boltStress_MPa: policy.maximumBoltUtilisation * yield_MPa,
    source: 'site policy on ambient yield, on the tensile area, for the nominal stress',
    formula: 'share·yield·At/Ab',
    text: () => `${show(policy.maximumBoltUtilisation)} × ${show(joint.yield_MPa)} × ${show(toArea)}`,
    more: scatterIncluded,
  });
  add({
    name: 'bolt-yield',
    boltStress_MPa: yield_MPa / overYield,
    source: yieldSource,
    formula: 'yield·At/Ab/(torsion·(1 + scatter))',
    text: () => `${show(joint.yield_MPa)} × ${show(toArea)} / ${overYieldText()}`,
    more: scatterIncluded,
  });
  add({
    name: 'gasket-maximum',
    boltStress_MPa: crush_MPa,
    source: gasketSource,
    formula: 'SgM·Ag/(Ab·nb)',
    text: crushText,
    more: full,
  });
  if (thermal !== undefined && thermal.gain_MPa > 0) {
    const { gain_MPa } = thermal;
    if (gain_MPa >= Math.min(yield_MPa, crush_MPa)) {
      refuse(
        'service.thermal',
        'thermal-gain-too-high',
        `The temperature difference alone adds ${gain_MPa.toFixed(0)} MPa to the bolts; ${Math.min(yield_MPa, crush_MPa).toFixed(0)} MPa is all that bolt and gasket bear. Give the stiffnesses, or lower the difference (slower start-up, insulation, longer bolts).`,
        Math.min(yield_MPa, crush_MPa),
      );
    }
    add({
      name: 'bolt-thermal-gain',
      boltStress_MPa: (yield_MPa - gain_MPa) / overYield,
      source: `${yieldSource}; ${thermal.source}`,
      formula: '(yield·At/Ab − ΔSb)/(torsion·(1 + scatter))',
      text: () => `(${show(joint.yield_MPa)} × ${show(toArea)} − ${show(gain_MPa)}) / ${overYieldText()}`,
      more: scatterIncluded,
    });
    add({
      name: 'gasket-thermal-gain',
      boltStress_MPa: crush_MPa - gain_MPa,
      source: `${gasketSource}; ${thermal.source}`,
      formula: 'SgM·Ag/(Ab·nb) − ΔSb',
      text: () => `${crushText()} − ${show(gain_MPa)}`,
      more: full,
    });
  }

  const flange_MPa = flange.maximumBoltStress_MPa;
  if (flange_MPa !== undefined) {
    add({
      name: 'flange-strength',
      boltStress_MPa: flange_MPa,
      source: flange.maximumBoltStressSource ?? 'entered',
      formula: 'as entered',
      text: () => show(flange_MPa),
    });
  }
  const { rotation } = flange;
  if (rotation?.flangeAtMaximum_deg !== undefined && flange_MPa !== undefined) {
    const { gasketLimit_deg, flangeAtMaximum_deg } = rotation;
    add({
      name: 'flange-rotation',
      boltStress_MPa: (flange_MPa * gasketLimit_deg) / flangeAtMaximum_deg,
      source: `${JCM}; rotations: ${rotation.source}`,
      formula: 'Sfmax·(φgmax/φfmax)',
      text: () => `${show(flange_MPa)} × ${show(gasketLimit_deg)} / ${show(flangeAtMaximum_deg)}`,
    });
  }
  return limits;
}
