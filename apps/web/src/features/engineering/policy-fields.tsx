import type { ProcedureContent } from '@seatwell/contract';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { FieldGroup } from '../../ui/field-group.tsx';
import { NumberField } from '../../ui/number-field.tsx';
import { Select } from '../../ui/select.tsx';
import { TextField } from '../../ui/text-field.tsx';
import styles from './engineering.module.css';

type Policy = ProcedureContent['policy'];

/** How far bolts are used under this procedure, and on whose word. */
export function PolicyFields({ value, onChange }: { value: Policy; onChange: (value: Policy) => void }) {
  const text = useText('engineering');
  const format = useFormat();
  const set = (part: Partial<Policy>) => onChange({ ...value, ...part });
  const stress = value.targetBoltStress_MPa;
  return (
    <FieldGroup legend={text('policy')}>
      <div className={styles.pair}>
        <Select
          label={text('area-basis')}
          value={value.area}
          onChange={(area) => set({ area })}
          options={(['tensile', 'root'] as const).map((area) => ({ value: area, label: text(`area-${area}`) }))}
        />
        <NumberField
          label={text('least-share')}
          unit="%"
          least={5}
          most={90}
          decimals={1}
          value={value.minimumBoltUtilisation * 100}
          onChange={(percent) => percent !== undefined && set({ minimumBoltUtilisation: percent / 100 })}
        />
        <NumberField
          label={text('most-share')}
          unit="%"
          least={10}
          most={95}
          decimals={1}
          value={value.maximumBoltUtilisation * 100}
          onChange={(percent) => percent !== undefined && set({ maximumBoltUtilisation: percent / 100 })}
        />
        <NumberField
          label={text('scatter')}
          unit="%"
          least={0}
          most={60}
          decimals={1}
          hint={text('scatter-hint')}
          value={value.scatter_percent}
          onChange={(scatter_percent) => scatter_percent !== undefined && set({ scatter_percent })}
        />
        <NumberField
          label={text('wanted-stress')}
          optional
          unit={format.unit('stress')}
          hint={text('wanted-stress-hint')}
          decimals={1}
          value={stress === null ? undefined : format.toShown('stress', stress)}
          onChange={(shown) =>
            set({ targetBoltStress_MPa: shown === undefined ? null : format.toHeld('stress', shown) })
          }
        />
      </div>
      <TextField
        label={text('source')}
        lines={2}
        hint={text('policy-source-hint')}
        value={value.source}
        onChange={(source) => set({ source })}
      />
    </FieldGroup>
  );
}
