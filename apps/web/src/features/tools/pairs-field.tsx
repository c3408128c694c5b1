import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { Button } from '../../ui/button.tsx';
import { NumberField } from '../../ui/number-field.tsx';
import type { PairDraft } from './calibration-pairs.ts';
import styles from './tools.module.css';

const most = 40;

interface Props {
  readonly value: readonly PairDraft[];
  readonly onChange: (value: readonly PairDraft[]) => void;
}

/** Pump pressure and torque of a hydraulic wrench, line by line, as its certificate has them. */
export function PairsField({ value, onChange }: Props) {
  const text = useText('tools');
  const format = useFormat();
  const change = (index: number, next: Partial<PairDraft>) =>
    onChange(value.map((each, at) => (at === index ? { ...each, ...next } : each)));
  return (
    <fieldset className={styles.group}>
      <legend>{text('pairs')}</legend>
      {value.map((pair, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a line of the chart has no name but its place
        <div key={index} className={styles.two}>
          <NumberField
            label={text('pressure-of', { line: index + 1 })}
            unit={format.unit('pressure')}
            value={pair.pressure}
            onChange={(pressure) => change(index, { pressure })}
          />
          <NumberField
            label={text('torque-of', { line: index + 1 })}
            unit={format.unit('torque')}
            value={pair.torque}
            onChange={(torque) => change(index, { torque })}
          />
        </div>
      ))}
      {value.length < most && (
        <Button kind="quiet" onClick={() => onChange([...value, { pressure: undefined, torque: undefined }])}>
          {text('add-line')}
        </Button>
      )}
    </fieldset>
  );
}
