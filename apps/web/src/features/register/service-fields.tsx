import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { Checkbox } from '../../ui/checkbox.tsx';
import { NumberField } from '../../ui/number-field.tsx';
import { TextField } from '../../ui/text-field.tsx';
import styles from './joint-form.module.css';
import { type DraftProps, JointFieldGroup } from './joint-form.tsx';

/** What the joint holds back: without pressure and temperature no target is calculated. */
export function ServiceFields({ draft, onChange }: DraftProps) {
  const text = useText('jointForm');
  const format = useFormat();
  const { pressure_MPa, temperature_C } = draft;
  return (
    <JointFieldGroup legend={text('service')}>
      <TextField label={text('medium')} optional value={draft.medium} onChange={(medium) => onChange({ medium })} />
      <NumberField
        label={text('pressure')}
        optional
        unit={format.unit('pressure')}
        decimals={4}
        value={pressure_MPa === undefined ? undefined : format.toShown('pressure', pressure_MPa)}
        onChange={(shown) =>
          onChange({
            pressure_MPa: shown === undefined ? undefined : format.toHeld('pressure', shown),
            pressureAsEntered: shown === undefined ? null : { value: shown, unit: format.unit('pressure') },
          })
        }
      />
      <NumberField
        label={text('temperature')}
        optional
        unit={format.unit('temperature')}
        decimals={1}
        value={temperature_C === undefined ? undefined : format.toShown('temperature', temperature_C)}
        onChange={(shown) =>
          onChange({
            temperature_C: shown === undefined ? undefined : format.toHeld('temperature', shown),
            temperatureAsEntered: shown === undefined ? null : { value: shown, unit: format.unit('temperature') },
          })
        }
      />
      <div className={styles.whole}>
        <Checkbox
          label={text('hot-exposed')}
          detail={text('hot-exposed-detail')}
          checked={draft.hotExposed}
          onChange={(hotExposed) => onChange({ hotExposed })}
        />
      </div>
    </JointFieldGroup>
  );
}
