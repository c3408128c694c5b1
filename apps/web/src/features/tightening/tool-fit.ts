import { CalcRefusal, hydraulicPressure } from '@seatwell/calc';
import type { Said, TighteningMethod, ToolRow, ToolSetting } from '@seatwell/contract';

// Mechanical wrenches are used between 20 and 100 % of their scale (common practice); the rule of the record says the same.
const LEAST_SHARE_OF_SCALE = 0.2;

export interface Range {
  readonly least: number;
  readonly most: number;
  readonly unit: 'N·m' | 'MPa' | 'mm';
}

/** The range in which a tool holds its accuracy, in the unit of its scale. */
export function usableRange(tool: ToolRow): Range {
  const share = tool.kind === 'torque-wrench' ? tool.scaleMaximum * LEAST_SHARE_OF_SCALE : 0;
  return { least: Math.max(tool.scaleMinimum ?? 0, share), most: tool.scaleMaximum, unit: tool.scaleUnit };
}

export type Unfit =
  | { readonly why: 'failed' | 'lapsed' | 'never-calibrated' | 'no-chart' | 'other-scale' | 'other-area' }
  | { readonly why: 'out-of-range'; readonly range: Range };

/** Why a tool cannot be used for a value; null when it can. */
export function unfit(tool: ToolRow, value: number | null, unit: Range['unit']): Unfit | null {
  if (tool.state === 'failed' || tool.state === 'lapsed' || tool.state === 'never-calibrated')
    return { why: tool.state };
  if (value === null) return null;
  if (tool.scaleUnit !== unit) return { why: 'other-scale' };
  const range = usableRange(tool);
  return value < range.least || value > range.most ? { why: 'out-of-range', range } : null;
}

/**
 * The tools of a list that fit first, each with the reason where it does not.
 * @param area_mm2 hydraulic area that the pressures of a target are for
 */
export function toolsInOrder(
  tools: readonly ToolRow[],
  kind: ToolRow['kind'],
  value: number | null,
  unit: Range['unit'],
  area_mm2?: number,
): readonly { readonly tool: ToolRow; readonly unfit: Unfit | null }[] {
  return tools
    .filter((tool) => tool.kind === kind)
    .map((tool) => ({ tool, unfit: withChart(tool) ?? ofOtherArea(tool, area_mm2) ?? unfit(tool, value, unit) }))
    .sort((a, b) => Number(a.unfit !== null) - Number(b.unfit !== null) || a.tool.tag.localeCompare(b.tool.tag, 'en'));
}

/** The pressures of a target hold for the hydraulic area that they were calculated with, and for no other. */
export function ofOtherArea(tool: ToolRow, area_mm2: number | undefined): Unfit | null {
  return area_mm2 === undefined || tool.hydraulicArea_mm2 === area_mm2 ? null : { why: 'other-area' };
}

function withChart(tool: ToolRow): Unfit | null {
  if (tool.kind !== 'hydraulic-wrench' || tool.inForce === null) return null;
  return tool.inForce.pairs.length < 2 ? { why: 'no-chart' } : null;
}

/** The tool kind that a method tightens with. */
export const KIND_OF_METHOD = {
  'torque-wrench': 'torque-wrench',
  'hydraulic-wrench': 'hydraulic-wrench',
  tensioner: 'tensioner',
  elongation: 'length-gauge',
} as const satisfies Record<TighteningMethod, ToolRow['kind']>;

export interface Units {
  readonly toShown: (name: 'torque' | 'pressure', held: number) => number;
  readonly toHeld: (name: 'torque' | 'pressure', shown: number) => number;
  readonly unit: (name: 'torque' | 'pressure') => string;
}

// From here on a whole unit is at most 1 % off: nobody reads a wrench finer than that (common practice).
const WHOLE_FROM = 50;

/** What a person can read and set: whole units, and three digits below 50. */
export function readable(shown: number): number {
  if (Math.abs(shown) >= WHOLE_FROM) return Math.round(shown);
  const magnitude = Math.floor(Math.log10(Math.abs(shown))) + 1;
  const decimals = Math.min(6, Math.max(0, 3 - magnitude));
  return Number(shown.toFixed(decimals));
}

function atMark(shown: number, division: number | null): number {
  if (division === null || division <= 0) return readable(shown);
  return Number((Math.round(shown / division) * division).toPrecision(12));
}

export type SettingResult =
  | { readonly kind: 'set'; readonly set: ToolSetting; readonly resulting_Nm: number | null }
  | { readonly kind: 'refused'; readonly errors: readonly Said[] };

/**
 * What is set on the tool for a torque: on a wrench the torque at the mark of its scale, on a hydraulic wrench the
 * pump pressure at the mark of the gauge, and with it the torque that results.
 */
export function torqueSetting(
  torque_Nm: number,
  tool: ToolRow,
  gauge: ToolRow | undefined,
  units: Units,
): SettingResult {
  if (tool.kind !== 'hydraulic-wrench') {
    const sameUnit = units.unit('torque') === tool.scaleUnit;
    const value = atMark(units.toShown('torque', torque_Nm), sameUnit ? tool.scaleDivision : null);
    const set = { torque_Nm: units.toHeld('torque', value), asEntered: { value, unit: units.unit('torque') } };
    return { kind: 'set', set, resulting_Nm: null };
  }
  const division = gauge?.scaleDivision ?? null;
  if (!gauge || division === null) return { kind: 'refused', errors: [] };
  try {
    const pairs = tool.inForce?.pairs ?? [];
    const { pressure_MPa, resultingTorque_Nm } = hydraulicPressure({ torque_Nm, pairs, gaugeDivision_MPa: division });
    const value = readable(units.toShown('pressure', pressure_MPa));
    const set = { torque_Nm: resultingTorque_Nm, asEntered: { value, unit: units.unit('pressure') } };
    return { kind: 'set', set, resulting_Nm: resultingTorque_Nm };
  } catch (error) {
    if (error instanceof CalcRefusal) return { kind: 'refused', errors: error.errors };
    throw error;
  }
}

/** What is set on the pump of a tensioner. */
export function pressureSetting(pressure_MPa: number, units: Units): ToolSetting {
  // The target lies at a mark of the gauge already: rounding to whole units would move it off the mark.
  const value = Number(units.toShown('pressure', pressure_MPa).toPrecision(5));
  return { pressure_MPa: units.toHeld('pressure', value), asEntered: { value, unit: units.unit('pressure') } };
}
