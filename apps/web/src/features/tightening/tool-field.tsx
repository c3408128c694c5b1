import type { ToolRow } from '@seatwell/contract';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { Combobox } from '../../ui/combobox.tsx';
import { RadioCards } from '../../ui/radio-cards.tsx';
import { type Range, toolsInOrder, type Unfit, usableRange } from './tool-fit.ts';

export interface ToolFieldProps {
  readonly label: string;
  readonly kind: ToolRow['kind'];
  readonly tools: readonly ToolRow[];
  /** what it is to be set to; null = only its calibration counts */
  readonly value: number | null;
  readonly unit: Range['unit'];
  /** of a tensioner: the hydraulic area that the target is for */
  readonly area_mm2?: number | undefined;
  readonly chosen: string;
  readonly onChange: (toolId: string) => void;
}

const fewTools = 4;

/** The tools of a kind: those that fit first, the others with the reason why not. */
export function ToolField({ label, kind, tools, value, unit, area_mm2, chosen, onChange }: ToolFieldProps) {
  const text = useText('tightening');
  const words = useToolWords();
  const listed = toolsInOrder(tools, kind, value, unit, area_mm2);
  if (listed.length === 0) return <p>{text('no-tool-of-kind', { kind: label })}</p>;
  const options = listed.map(({ tool, unfit }) => ({
    value: tool.toolId,
    label: tool.tag,
    detail: words.about(tool),
    disabledReason: unfit === null ? undefined : words.unfit(tool, unfit),
  }));
  return options.length <= fewTools ? (
    <RadioCards label={label} value={chosen} options={options} onChange={onChange} />
  ) : (
    <Combobox label={label} value={chosen} options={options} onChange={onChange} />
  );
}

/** Range and calibration of a tool, and why it cannot be used, in words. */
export function useToolWords() {
  const text = useText('tightening');
  const format = useFormat();
  const quantity = { N·m: 'torque', MPa: 'pressure', mm: 'gap' } as const;
  const range = ({ least, most, unit }: Range) => format.range(quantity[unit], least, most);
  return {
    about: (tool: ToolRow): string => {
      const valid = tool.inForce
        ? text(tool.state === 'provisional' ? 'tool-provisional' : 'tool-valid', {
            day: format.calendarDay(tool.inForce.validThrough),
          })
        : '';
      return [range(usableRange(tool)), valid].filter(Boolean).join(' · ');
    },
    unfit: (tool: ToolRow, unfit: Unfit): string =>
      unfit.why === 'out-of-range'
        ? text('unfit-out-of-range', { range: range(unfit.range) })
        : text(`unfit-${unfit.why}`, { kind: tool.tag }),
  };
}
