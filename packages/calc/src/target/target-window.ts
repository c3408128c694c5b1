import { finite } from '../checks.ts';
import { retighteningRule } from '../gaskets/retightening.ts';
import type { Explained, Warning } from '../working.ts';
import { explained, show, stepsFor } from '../working.ts';
import { flangeCapacity } from './flange-capacity.ts';
import { type Joint, resolveJoint } from './joint.ts';
import { lowerLimits } from './lower-limits.ts';
import { remediesFor } from './remedies.ts';
import type { TargetAnswer, TargetRequest, WindowLimit } from './request.ts';
import { thermalChange } from './thermal.ts';
import { passSettings, toolSetting } from './tool-setting.ts';
import { upperLimits } from './upper-limits.ts';

const highest = (limits: readonly WindowLimit[]) =>
  limits.reduce((most, limit) => (limit.boltStress_MPa > most.boltStress_MPa ? limit : most));
const binding = (limit: WindowLimit) => limit.advisory !== true;
const lowest = (limits: readonly WindowLimit[]) =>
  limits.reduce((least, limit) => (limit.boltStress_MPa < least.boltStress_MPa ? limit : least));

interface Choice {
  readonly boltStress_MPa: number;
  readonly governedBy: string;
  readonly warnings: readonly Warning[];
}

/** The stress wanted by the gasket, held inside the window; a given stress is kept as it is. */
function chooseTarget(input: TargetRequest, joint: Joint, low: WindowLimit, high: WindowLimit): Choice {
  const given_MPa = input.target?.boltStress_MPa;
  if (given_MPa !== undefined) {
    const outside = given_MPa < low.boltStress_MPa || given_MPa > high.boltStress_MPa;
    return {
      boltStress_MPa: given_MPa,
      governedBy: 'given',
      warnings: outside
        ? [
            {
              code: 'target-outside-window',
              message: `The given ${given_MPa} MPa lies outside ${low.boltStress_MPa.toFixed(0)} (${low.name}) to ${high.boltStress_MPa.toFixed(0)} MPa (${high.name}).`,
            },
          ]
        : [],
    };
  }
  const wanted_MPa = (joint.limits.target_MPa * joint.gasketArea_mm2) / (joint.area_mm2 * joint.count);
  if (wanted_MPa > high.boltStress_MPa || low.boltStress_MPa > high.boltStress_MPa) {
    return { boltStress_MPa: high.boltStress_MPa, governedBy: high.name, warnings: [] };
  }
  if (wanted_MPa < low.boltStress_MPa)
    return { boltStress_MPa: low.boltStress_MPa, governedBy: low.name, warnings: [] };
  return { boltStress_MPa: wanted_MPa, governedBy: 'gasket-target', warnings: [] };
}

function spreadOf(stress_MPa: number, scatter: number, lower: readonly WindowLimit[], upper: readonly WindowLimit[]) {
  const low_MPa = stress_MPa * (1 - scatter);
  const high_MPa = stress_MPa * (1 + scatter);
  return {
    low_MPa,
    high_MPa,
    insideWindow:
      lower.every((limit) => low_MPa >= limit.boltStress_MPa) &&
      upper.every((limit) => (limit.scatterIncluded === true ? stress_MPa : high_MPa) <= limit.boltStress_MPa),
  };
}

/** Advisory limits that the target does not keep. */
function advisoryWarnings(
  target_MPa: number,
  lower: readonly WindowLimit[],
  upper: readonly WindowLimit[],
): readonly Warning[] {
  const missed = [
    ...lower.flatMap((limit) => (limit.boltStress_MPa > target_MPa ? [{ side: 'below', limit }] : [])),
    ...upper.flatMap((limit) => (limit.boltStress_MPa < target_MPa ? [{ side: 'above', limit }] : [])),
  ].filter(({ limit }) => !binding(limit));
  return missed.map(({ side, limit: { name, boltStress_MPa } }) => ({
    code: `${side}-code-advisory`,
    message: `The target lies ${side} ${name} (${boltStress_MPa.toFixed(0)} MPa), advisory for a flange rated by its standard.`,
  }));
}

/**
 * The target window of a joint: every limit of the bolt stress, the target, its spread, the tool's setting.
 *
 * Source: ASME PCC-1 joint component method; VDI 2230 for torsion; ASME VIII-1 App. 2 for the code's loads and flange
 *   stresses, advisory for flanges rated by their standard and governing for custom ones; temperature by statics.
 * Formula: wanted stress = SgT·Ag/(Ab·nb), held between the highest lower and the lowest upper limit.
 * @param input.area area that all bolt stresses of the answer stand on
 * @param input.policy shares of ambient yield on the tensile area
 * @throws CalcRefusal `gasket-data-missing` without the maker's or the site's limits; refusals of all look-ups
 * Note: crossing limits are an answer: `window.open` is false, with shortfall and remedies; the target is then the
 *   upper limit. The scatter is inside the bolt limits; the spread says whether low and high stay inside too.
 */
export function targetWindow(input: TargetRequest): TargetAnswer & Explained {
  const steps = stepsFor(input);
  const joint = resolveJoint(input);
  const thermal = thermalChange(input, joint, steps);
  const lower = lowerLimits(input, joint, thermal, steps);
  const flange = flangeCapacity(input, joint, steps);
  const upper = [...upperLimits(input, joint, thermal, steps), ...(flange?.limits ?? [])];
  const floors = lower.filter(binding);
  const ceilings = upper.filter(binding);
  const low = highest(floors);
  const high = lowest(ceilings);
  const open = low.boltStress_MPa <= high.boltStress_MPa;
  const choice = chooseTarget(input, joint, low, high);
  const boltStress_MPa = finite('target.boltStress_MPa', choice.boltStress_MPa);
  const boltLoad_N = boltStress_MPa * joint.area_mm2;
  const gasketStress_MPa = (boltLoad_N * joint.count) / joint.gasketArea_mm2;
  const warnings: Warning[] = [
    ...joint.warnings,
    ...(thermal?.warnings ?? []),
    ...(flange?.warnings ?? []),
    ...choice.warnings,
    ...advisoryWarnings(boltStress_MPa, lower, upper),
  ];
  steps?.push(
    {
      symbol: 'Sb',
      meaning: `target bolt stress, governed by ${choice.governedBy}`,
      formula: choice.governedBy === 'gasket-target' ? 'SgT·Ag/(Ab·nb)' : choice.governedBy,
      substituted:
        choice.governedBy === 'gasket-target'
          ? `${show(joint.limits.target_MPa)} × ${show(joint.gasketArea_mm2)} / (${show(joint.area_mm2)} × ${joint.count})`
          : show(boltStress_MPa),
      value: boltStress_MPa,
      unit: 'MPa',
      source: 'ASME PCC-1 joint component method',
    },
    {
      symbol: 'Fb',
      meaning: 'bolt load',
      formula: 'Sb·Ab',
      substituted: `${show(boltStress_MPa)} × ${show(joint.area_mm2)}`,
      value: boltLoad_N,
      unit: 'N',
      source: `${input.area} area`,
    },
    {
      symbol: 'Sg',
      meaning: 'gasket stress at assembly, full contact width',
      formula: 'Fb·nb/Ag',
      substituted: `${show(boltLoad_N)} × ${joint.count} / ${show(joint.gasketArea_mm2)}`,
      value: gasketStress_MPa,
      unit: 'MPa',
      source: 'statics',
    },
  );
  const setting = toolSetting(input, joint, boltLoad_N);
  warnings.push(...setting.warnings);
  steps?.push(...(setting.working ?? []));
  const passes = passSettings(input, joint, boltLoad_N);
  return explained(
    {
      window: {
        open,
        lower,
        upper,
        ...(open ? {} : { shortfall_MPa: low.boltStress_MPa - high.boltStress_MPa, remedies: remediesFor(low, high) }),
      },
      target: { boltStress_MPa, area: input.area, boltLoad_N, gasketStress_MPa, governedBy: choice.governedBy },
      spread: spreadOf(boltStress_MPa, joint.scatter, floors, ceilings),
      tool: setting.tool,
      passes,
      ...(flange === undefined ? {} : { flangeStress: flange.atTarget(boltStress_MPa) }),
      retightening: retighteningRule(input.gasket.family),
    },
    warnings,
    steps,
  );
}
