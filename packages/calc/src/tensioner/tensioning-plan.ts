import { POSITIVE, requireInRange } from '../checks.ts';
import { refuse } from '../refusal.ts';
import type { RingJointRequest, StandardJointRequest } from '../simulation/standard-joint.ts';
import { areasOf } from '../threads/geometry.ts';
import type { Warning } from '../working.ts';
import { tensionerGroupLoads, tensioningGroups } from './group-pressures.ts';
import { type TensionerRequest, tensioner, UTILISATION_LIMIT } from './tensioner.ts';

export interface TensioningPlanRequest {
  readonly thread: string;
  readonly boltCount: number;
  /** Load that each bolt keeps after the tool is let off. */
  readonly residualLoad_N: number;
  readonly effectiveLength_mm: number;
  readonly hydraulicArea_mm2: number;
  readonly coverage: TensionerRequest['coverage'];
  readonly yield_MPa: number;
  /** Highest pressure of the tool. */
  readonly toolMaximumPressure_MPa: number;
  /** Division of the pump's gauge: nothing between its marks can be set. */
  readonly gaugeDivision_MPa: number;
  /** Shares of the load, rising, ending at 100. */
  readonly passPercents: readonly number[];
  /** The joint as the simulation takes it; needed below full coverage. */
  readonly joint?: StandardJointRequest | RingJointRequest;
}

export interface TensioningPlan {
  readonly loadTransferFactor: number;
  readonly toolLoad_N: number;
  /** Highest tool load of a group, as set, over yield load on the tensile area. */
  readonly utilisation: number;
  /** Clockwise places of the bolts of each group, in the order of tensioning. */
  readonly groups: readonly (readonly number[])[];
  /** The pressure of each group in each pass, at a mark of the gauge. */
  readonly passes: readonly { readonly percent: number; readonly groupPressures_MPa: readonly number[] }[];
  /** Thread to stand out of the nut, about one diameter (common practice). */
  readonly protrusion_mm: number;
  readonly warnings: readonly Warning[];
}

/** How far the mark of a gauge may lie from the pressure at full load: as far as a set value from its target. */
const MOST_ROUNDING = 0.05;

/** The nearest mark; the digits behind it come from the multiplication, not from the gauge. */
const atMark = (pressure_MPa: number, division_MPa: number): number =>
  Number((Math.round(pressure_MPa / division_MPa) * division_MPa).toPrecision(12));

/**
 * What a tensioner's pump is set to, group by group and pass by pass. Nothing of it is a warning that could be passed
 * over: above 95 % of yield, above the tool's pressure and without the pressures of the groups there is no plan.
 *
 * Source: `tensioner` for the tool load; the simulation for the groups below full coverage, since no number is published.
 * Formula: pressure = tool load × load of the group / hydraulic area, at the nearest mark of the gauge.
 * @throws CalcRefusal of `tensioner` and `tensionerGroupLoads`; `group-pressures-need-simulation`,
 *   `tool-load-above-yield-limit`, `above-tool-pressure`, `gauge-division-too-coarse`
 */
export function tensioningPlan(input: TensioningPlanRequest): TensioningPlan {
  requireInRange([
    ['gaugeDivision_MPa', input.gaugeDivision_MPa, POSITIVE],
    ['toolMaximumPressure_MPa', input.toolMaximumPressure_MPa, POSITIVE],
    ...input.passPercents.map((percent, i) => [`passPercents.${i}`, percent, { min: 1, max: 100 }] as const),
  ]);
  const groups = tensioningGroups(input.boltCount, input.coverage);
  const { joint, ...single } = input;
  const { loadTransferFactor, toolLoad_N, pressure_MPa } = tensioner({ ...single, coverage: 1 });
  const loads = loadsOfGroups(input, groups.length);
  const { nominalDiameter_mm, tensileStressArea_mm2 } = areasOf(input.thread);
  const passes = input.passPercents.map((percent) => ({
    percent,
    groupPressures_MPa: loads.percents.map((load) =>
      settable((pressure_MPa * load * percent) / 10_000, percent, input.gaugeDivision_MPa),
    ),
  }));
  const highest_MPa = Math.max(...passes.flatMap(({ groupPressures_MPa }) => groupPressures_MPa));
  const utilisation = (highest_MPa * input.hydraulicArea_mm2) / (input.yield_MPa * tensileStressArea_mm2);
  requireBearable(input, highest_MPa, utilisation);
  return {
    loadTransferFactor,
    toolLoad_N,
    utilisation,
    groups,
    passes,
    protrusion_mm: nominalDiameter_mm,
    warnings: loads.warnings,
  };
}

function loadsOfGroups(
  input: TensioningPlanRequest,
  count: number,
): { readonly percents: readonly number[]; readonly warnings: readonly Warning[] } {
  if (count === 1) return { percents: [100], warnings: [] };
  const covered = `At ${Math.round(input.coverage * 100)} % coverage`;
  if (input.joint === undefined) {
    refuse(
      'joint',
      'group-pressures-need-simulation',
      `${covered} each group needs its own pressure: no published number exists, and this joint cannot be simulated. Tension all bolts at once.`,
    );
  }
  const { percents, warnings } = tensionerGroupLoads({ ...input, joint: input.joint });
  return {
    percents,
    warnings: [
      {
        code: 'group-pressures-simulated',
        message: `${covered} the pressures of the groups are simulated; no published number exists. Check the loads after the first joint of a kind.`,
      },
      ...warnings,
    ],
  };
}

function settable(pressure_MPa: number, percent: number, division_MPa: number): number {
  const set_MPa = atMark(pressure_MPa, division_MPa);
  const most = percent === 100 ? MOST_ROUNDING : 2 * MOST_ROUNDING;
  if (Math.abs(set_MPa - pressure_MPa) > most * pressure_MPa) {
    refuse(
      'gaugeDivision_MPa',
      'gauge-division-too-coarse',
      `${pressure_MPa.toFixed(2)} MPa cannot be set on a gauge with marks every ${division_MPa} MPa. Take a finer gauge.`,
      division_MPa,
    );
  }
  return set_MPa;
}

function requireBearable(input: TensioningPlanRequest, highest_MPa: number, utilisation: number): void {
  if (utilisation > UTILISATION_LIMIT) {
    refuse(
      'residualLoad_N',
      'tool-load-above-yield-limit',
      `${highest_MPa} MPa takes the bolt to ${(utilisation * 100).toFixed(0)} % of yield; the limit is ${UTILISATION_LIMIT * 100} %. Lower the bolt stress, cover more bolts at once or use a stronger grade.`,
      UTILISATION_LIMIT,
    );
  }
  if (highest_MPa > input.toolMaximumPressure_MPa) {
    refuse(
      'toolMaximumPressure_MPa',
      'above-tool-pressure',
      `${highest_MPa} MPa is above the tool’s ${input.toolMaximumPressure_MPa} MPa. Choose a tensioner with a larger hydraulic area.`,
      input.toolMaximumPressure_MPa,
    );
  }
}
