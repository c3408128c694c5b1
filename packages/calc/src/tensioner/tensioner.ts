import { NOT_NEGATIVE, POSITIVE, requireInRange } from '../checks.ts';
import type { RingJointRequest, StandardJointRequest } from '../simulation/standard-joint.ts';
import { areasOf } from '../threads/geometry.ts';
import { type Explainable, type Explained, explained, show, stepsFor, type Warning } from '../working.ts';
import { tensionerGroupLoads } from './group-pressures.ts';

export interface TensionerRequest extends Explainable {
  readonly thread: string;
  /** Load that the bolt keeps after the tool is let off. */
  readonly residualLoad_N: number;
  readonly effectiveLength_mm: number;
  readonly hydraulicArea_mm2: number;
  /** Share of the bolts under tools at once. */
  readonly coverage: 1 | 0.5 | 0.33 | 0.25;
  readonly yield_MPa: number;
  /** Thread standing out of the nut, mm. */
  readonly protrusion_mm?: number;
  /** Highest pressure of the tool, MPa. */
  readonly toolMaximumPressure_MPa?: number;
  /** The joint, as the simulation takes it, for the pressures of the groups. */
  readonly joint?: StandardJointRequest | RingJointRequest;
}

export interface TensionerAnswer extends Explained {
  readonly loadTransferFactor: number;
  readonly toolLoad_N: number;
  /** For full coverage, or the last group. */
  readonly pressure_MPa: number;
  /** In the order of the groups; only with `joint`. */
  readonly groupPressures_MPa?: readonly number[];
  /** Highest tool load over yield load on the tensile area. */
  readonly utilisation: number;
}

/** Share of bolt yield that the tool may reach. */
export const UTILISATION_LIMIT = 0.95;
const LEAST_FACTOR = 1.1;
const BASE_FACTOR = 1.01;

/**
 * Pressure of a bolt tensioner for a load that is to remain.
 *
 * Source: a tensioner maker's application note (read): LTF = max(1.01 + D/Leff, 1.10); at most 95 % of bolt yield.
 * Formula: tool load = residual × LTF; pressure = tool load / hydraulic area.
 * @param input.coverage below 1 the later group unloads the earlier: its pressure comes from the simulation
 * @throws CalcRefusal `unknown-thread`, `out-of-range`, and with `joint` those of tensionerGroupLoads
 */
export function tensioner(input: TensionerRequest): TensionerAnswer {
  requireInRange([
    ['residualLoad_N', input.residualLoad_N, POSITIVE],
    ['effectiveLength_mm', input.effectiveLength_mm, POSITIVE],
    ['hydraulicArea_mm2', input.hydraulicArea_mm2, POSITIVE],
    ['coverage', input.coverage, { min: 0.25, max: 1 }],
    ['yield_MPa', input.yield_MPa, POSITIVE],
    ['protrusion_mm', input.protrusion_mm, NOT_NEGATIVE],
    ['toolMaximumPressure_MPa', input.toolMaximumPressure_MPa, POSITIVE],
  ]);
  const { nominalDiameter_mm: d, tensileStressArea_mm2 } = areasOf(input.thread);
  const loadTransferFactor = Math.max(BASE_FACTOR + d / input.effectiveLength_mm, LEAST_FACTOR);
  const toolLoad_N = input.residualLoad_N * loadTransferFactor;
  const pressure_MPa = toolLoad_N / input.hydraulicArea_mm2;
  const groups = input.joint === undefined ? undefined : tensionerGroupLoads({ ...input, joint: input.joint });
  const groupPressures_MPa = groups?.percents.map((percent) => (pressure_MPa * percent) / 100);
  const highest_MPa = Math.max(pressure_MPa, ...(groupPressures_MPa ?? []));
  const utilisation = (highest_MPa * input.hydraulicArea_mm2) / (input.yield_MPa * tensileStressArea_mm2);
  const source = 'tensioner maker’s application note (read)';
  const steps = stepsFor(input);
  steps?.push(
    {
      symbol: 'LTF',
      meaning: 'load transfer factor',
      formula: 'max(1.01 + D/Leff, 1.10)',
      substituted: `max(${BASE_FACTOR} + ${show(d)} / ${show(input.effectiveLength_mm)}, ${LEAST_FACTOR})`,
      value: loadTransferFactor,
      unit: '',
      source,
    },
    {
      symbol: 'Ft',
      meaning: 'tool load',
      formula: 'F·LTF',
      substituted: `${show(input.residualLoad_N)} × ${show(loadTransferFactor)}`,
      value: toolLoad_N,
      unit: 'N',
      source,
    },
    {
      symbol: 'p',
      meaning: 'pump pressure',
      formula: 'Ft/Ah',
      substituted: `${show(toolLoad_N)} / ${show(input.hydraulicArea_mm2)}`,
      value: pressure_MPa,
      unit: 'MPa',
      source,
    },
  );
  return explained(
    {
      loadTransferFactor,
      toolLoad_N,
      pressure_MPa,
      ...(groupPressures_MPa === undefined ? {} : { groupPressures_MPa }),
      utilisation,
    },
    [...(groups?.warnings ?? []), ...tensionerWarnings(input, highest_MPa, utilisation, d)],
    steps,
  );
}

function tensionerWarnings(
  input: TensionerRequest,
  pressure_MPa: number,
  utilisation: number,
  diameter_mm: number,
): Warning[] {
  const warnings: Warning[] = [];
  if (utilisation > UTILISATION_LIMIT) {
    warnings.push({
      code: 'tool-load-above-yield-limit',
      message: `The tool load takes the bolt to ${(utilisation * 100).toFixed(0)} % of yield; the limit is 95 %. Lower the residual load or use a stronger grade.`,
    });
  }
  if (input.coverage < 1 && input.joint === undefined) {
    warnings.push({
      code: 'group-pressures-need-simulation',
      message: `At ${Math.round(input.coverage * 100)} % coverage the groups before the last need a higher pressure: no published number exists; take it from the simulation of this joint.`,
    });
  }
  if (input.protrusion_mm === undefined) {
    warnings.push({
      code: 'protrusion-unknown',
      message: `A tensioner needs about one diameter (${diameter_mm.toFixed(0)} mm) of thread beyond the nut: check it.`,
    });
  } else if (input.protrusion_mm < diameter_mm) {
    warnings.push({
      code: 'protrusion-short',
      message: `${input.protrusion_mm} mm of thread stand out; a tensioner needs about ${diameter_mm.toFixed(0)} mm. Fit longer studs.`,
    });
  }
  if (input.toolMaximumPressure_MPa !== undefined && pressure_MPa > input.toolMaximumPressure_MPa) {
    warnings.push({
      code: 'above-tool-pressure',
      message: `The pressure ${pressure_MPa.toFixed(1)} MPa is above the tool’s ${input.toolMaximumPressure_MPa} MPa. Use a larger tool.`,
    });
  }
  return warnings;
}
