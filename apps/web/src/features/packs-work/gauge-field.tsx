import type { ToolRow } from '@seatwell/contract';
import { useText } from '../../texts/text-provider.tsx';
import { Checkbox } from '../../ui/checkbox.tsx';
import { useToolWords } from '../tightening/tool-field.tsx';
import { unfit } from '../tightening/tool-fit.ts';
import styles from '../work/work.module.css';

export interface GaugeFieldProps {
  readonly tools: readonly ToolRow[];
  readonly pressure_MPa: number;
  readonly chosen: readonly string[];
  readonly onChange: (toolIds: readonly string[]) => void;
}

/** The test gauges: those in calibration whose range holds the pressure can be ticked. */
export function GaugeField({ tools, pressure_MPa, chosen, onChange }: GaugeFieldProps) {
  const text = useText('testing');
  const words = useToolWords();
  const gauges = tools.filter((tool) => tool.kind === 'test-gauge');
  return (
    <fieldset className={styles.group}>
      <legend className={styles.legend}>{text('gauges')}</legend>
      {gauges.length === 0 && <p>{text('no-gauges')}</p>}
      {gauges.map((tool) => {
        const why = unfit(tool, pressure_MPa, 'MPa');
        return (
          <Checkbox
            key={tool.toolId}
            label={tool.tag}
            detail={words.about(tool)}
            checked={chosen.includes(tool.toolId)}
            disabledReason={why === null ? undefined : words.unfit(tool, why)}
            onChange={(on) => onChange(on ? [...chosen, tool.toolId] : chosen.filter((each) => each !== tool.toolId))}
          />
        );
      })}
    </fieldset>
  );
}
