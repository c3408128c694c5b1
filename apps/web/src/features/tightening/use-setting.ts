import type { MakeAnswer, ToolRow, ToolSetting } from '@seatwell/contract';
import { useSaid } from '../../app/use-said.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { KIND_OF_METHOD, ofOtherArea, pressureSetting, torqueSetting, unfit } from './tool-fit.ts';
import type { Wanted } from './wanted.ts';

export interface ChosenTools {
  readonly toolId: string;
  readonly pumpId: string;
  readonly gaugeId: string;
  readonly elongation_mm: number | null;
}

export interface Setting {
  /** null while a choice is missing or does not fit; `missing` then says what */
  readonly set: ToolSetting | null;
  readonly missing: string | undefined;
  /** of a hydraulic wrench: the torque that the gauge's mark really gives */
  readonly resulting_Nm: number | null;
}

const none = (missing: string): Setting => ({ set: null, missing, resulting_Nm: null });

/**
 * What is to be set on the chosen tools for each value of a pass.
 * @param area_mm2 hydraulic area that the pressures of the target are for
 */
export function useSettings(
  procedure: MakeAnswer['procedure'],
  wanted: readonly Wanted[],
  tools: readonly ToolRow[],
  chosen: ChosenTools,
  area_mm2: number | undefined,
): readonly Setting[] {
  const text = useText('tightening');
  const said = useSaid('calculation');
  const format = useFormat();
  const settingOf = (value: Wanted | null) => settingFor(procedure, value, tools, chosen, area_mm2, text, format, said);
  return wanted.length === 0 ? [settingOf(null)] : wanted.map(settingOf);
}

function settingFor(
  procedure: MakeAnswer['procedure'],
  wanted: Wanted | null,
  tools: readonly ToolRow[],
  chosen: ChosenTools,
  area_mm2: number | undefined,
  text: ReturnType<typeof useText<'tightening'>>,
  format: ReturnType<typeof useFormat>,
  said: ReturnType<typeof useSaid>,
): Setting {
  const units = { toShown: format.toShown, toHeld: format.toHeld, unit: format.unit };
  if (!procedure) return none(text('missing-procedure'));
  const { method } = procedure.content;
  const of = (toolId: string, kind: ToolRow['kind']) =>
    tools.find((tool) => tool.toolId === toolId && tool.kind === kind);
  const tool = of(chosen.toolId, KIND_OF_METHOD[method]);
  const gauge = of(chosen.gaugeId, 'pressure-gauge');
  const pump = of(chosen.pumpId, 'pump');
  if (!wanted) return none(text('missing-target'));
  if (!tool) return none(text('missing-tool'));
  const hydraulic = method === 'hydraulic-wrench' || method === 'tensioner';
  if (hydraulic && (!pump || !gauge)) return none(text('missing-pump-gauge'));
  if (method === 'elongation') {
    if (chosen.elongation_mm === null) return none(text('missing-elongation'));
    const value = Number(format.toShown('gap', chosen.elongation_mm).toPrecision(6));
    const set = { elongation_mm: chosen.elongation_mm, asEntered: { value, unit: format.unit('gap') } };
    return { set, missing: undefined, resulting_Nm: null };
  }
  if (method === 'tensioner') {
    if (wanted.pressure_MPa === null) return none(text('target-gives-no-pressure'));
    if (ofOtherArea(tool, area_mm2) || unfit(tool, wanted.pressure_MPa, 'MPa')) return none(text('missing-tool'));
    if (gauge && unfit(gauge, wanted.pressure_MPa, 'MPa')) return none(text('missing-gauge-range'));
    return { set: pressureSetting(wanted.pressure_MPa, units), missing: undefined, resulting_Nm: null };
  }
  if (wanted.torque_Nm === null) return none(text('target-gives-no-torque'));
  if (unfit(tool, wanted.torque_Nm, 'N·m')) return none(text('missing-tool'));
  if (method === 'hydraulic-wrench' && (gauge?.scaleDivision ?? null) === null) return none(text('gauge-no-division'));
  const result = torqueSetting(wanted.torque_Nm, tool, gauge, units);
  return result.kind === 'refused'
    ? none(result.errors.map((each) => said(each)).join(' '))
    : { set: result.set, missing: undefined, resulting_Nm: result.resulting_Nm };
}
