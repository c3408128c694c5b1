import { findNut } from '../bolting/nuts.ts';
import { elongation } from '../elongation/elongation.ts';
import { refuse } from '../refusal.ts';
import { DEFAULT_PASS_PERCENTS } from '../sequence/request.ts';
import { tensioner } from '../tensioner/tensioner.ts';
import { torqueModelOf } from '../torque/friction.ts';
import { hydraulicPressure } from '../torque/hydraulic-pressure.ts';
import { torqueFromLoad } from '../torque/torque.ts';
import type { Warning, WorkingStep } from '../working.ts';
import type { Joint } from './joint.ts';
import type { TargetAnswer, TargetRequest } from './request.ts';

interface Setting {
  readonly tool: TargetAnswer['tool'];
  readonly warnings: readonly Warning[];
  readonly working?: readonly WorkingStep[];
}

const workingOf = (...answers: readonly { readonly working?: readonly WorkingStep[] }[]) => {
  const steps = answers.flatMap(({ working = [] }) => working);
  return steps.length === 0 ? {} : { working: steps };
};

function torqued(input: TargetRequest, joint: Joint, load_N: number): Setting {
  const model = torqueModelOf(input.lubricant, joint.thread, joint.seat);
  const explain = input.working === true;
  const turned = torqueFromLoad({ thread: joint.thread, load_N, ...model, working: explain });
  const { torque_Nm, warnings } = turned;
  if (input.method !== 'hydraulic-wrench') return { tool: { torque_Nm }, warnings, ...workingOf(turned) };
  const wrench = input.tool?.wrench;
  if (wrench === undefined) {
    return {
      tool: { torque_Nm },
      ...workingOf(turned),
      warnings: [
        ...warnings,
        {
          code: 'tool-chart-missing',
          message: 'Pump pressure needs the tool’s pressure-torque pairs and gauge division.',
        },
      ],
    };
  }
  const pressure = hydraulicPressure({ torque_Nm, ...wrench, working: explain });
  return {
    tool: { torque_Nm, pressure_MPa: pressure.pressure_MPa, resultingTorque_Nm: pressure.resultingTorque_Nm },
    warnings: [...warnings, ...pressure.warnings],
    ...workingOf(turned, pressure),
  };
}

function tensioned(input: TargetRequest, joint: Joint, load_N: number): Setting {
  const missing = joint.effectiveLength_mm === undefined ? 'clampedParts' : 'tool.hydraulicArea_mm2';
  const hydraulicArea_mm2 = input.tool?.hydraulicArea_mm2;
  if (joint.effectiveLength_mm === undefined || hydraulicArea_mm2 === undefined) {
    return {
      tool: {},
      warnings: [{ code: 'tensioner-data-missing', message: `Tool load and pressure of a tensioner need ${missing}.` }],
    };
  }
  const answer = tensioner({
    thread: joint.thread,
    residualLoad_N: load_N,
    effectiveLength_mm: joint.effectiveLength_mm,
    hydraulicArea_mm2,
    coverage: 1,
    yield_MPa: joint.yield_MPa,
    working: input.working === true,
  });
  const { toolLoad_N, pressure_MPa, warnings } = answer;
  return { tool: { toolLoad_N, pressure_MPa }, warnings, ...workingOf(answer) };
}

function elongated(input: TargetRequest, joint: Joint, load_N: number): Setting {
  const elasticModulus_MPa = input.bolting.elasticModulus_MPa;
  if (joint.effectiveLength_mm === undefined || elasticModulus_MPa === undefined) {
    return {
      tool: {},
      warnings: [
        {
          code: 'elongation-data-missing',
          message: 'Elongation needs clampedParts for the effective length and bolting.elasticModulus_MPa.',
        },
      ],
    };
  }
  const stretched = elongation({
    thread: joint.thread,
    load_N,
    effectiveLength_mm: joint.effectiveLength_mm,
    elasticModulus_MPa,
    working: input.working === true,
  });
  const { effectiveLength_mm } = joint;
  return {
    tool: { elongation_mm: stretched.elongation_mm, effectiveLength_mm },
    warnings: [],
    ...workingOf(stretched),
  };
}

function settingFor(input: TargetRequest, joint: Joint, load_N: number): Setting {
  if (input.method === 'tensioner') return tensioned(input, joint, load_N);
  if (input.method === 'elongation') return elongated(input, joint, load_N);
  return torqued(input, joint, load_N);
}

/** What the tool is set to for a bolt load. */
export function toolSetting(input: TargetRequest, joint: Joint, load_N: number): Setting {
  const { tool, ...setting } = settingFor(input, joint, load_N);
  const acrossFlats_mm = findNut({ thread: joint.thread })?.acrossFlats_mm;
  return { tool: acrossFlats_mm === undefined ? tool : { ...tool, acrossFlats_mm }, ...setting };
}

/** The settings of each pass; a pass below the tool's range says so by having no pressure. */
export function passSettings(input: TargetRequest, joint: Joint, load_N: number): TargetAnswer['passes'] {
  const percents = input.passPercents ?? DEFAULT_PASS_PERCENTS;
  if (percents.some((percent) => !(percent > 0 && percent <= 100)) || percents.at(-1) !== 100) {
    refuse(
      'passPercents',
      'passes-must-rise-to-100',
      `Pass percents ${percents.join(', ')} must lie above 0 and end at 100.`,
      100,
    );
  }
  const pairs = input.tool?.wrench?.pairs;
  const model = torqueModelOf(input.lubricant, joint.thread, joint.seat);
  const quiet = input.working === true ? { ...input, working: false } : input;
  return percents.map((percent) => {
    const passLoad_N = (load_N * percent) / 100;
    const belowChart =
      input.method === 'hydraulic-wrench' &&
      pairs !== undefined &&
      torqueFromLoad({ thread: joint.thread, load_N: passLoad_N, ...model }).torque_Nm < (pairs[0]?.torque_Nm ?? 0);
    const { tool } = settingFor(belowChart ? { ...quiet, method: 'torque-wrench' } : quiet, joint, passLoad_N);
    return {
      percent,
      ...(tool.torque_Nm === undefined ? {} : { torque_Nm: tool.torque_Nm }),
      ...(tool.pressure_MPa === undefined ? {} : { pressure_MPa: tool.pressure_MPa }),
      ...(tool.elongation_mm === undefined ? {} : { elongation_mm: tool.elongation_mm }),
    };
  });
}
