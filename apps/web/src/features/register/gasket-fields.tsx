import { GASKET_FAMILIES_KNOWN } from '@seatwell/contract';
import { useTrade } from '../../app/use-trade.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { NumberField } from '../../ui/number-field.tsx';
import { Select } from '../../ui/select.tsx';
import { TextField } from '../../ui/text-field.tsx';
import styles from './joint-form.module.css';
import { type DraftProps, JointFieldGroup } from './joint-form.tsx';
import { standardGasket } from './standard-flange.ts';

/** The gasket, with the contact ring of its standard where the tables have it. */
export function GasketFields({ draft, onChange }: DraftProps) {
  const text = useText('jointForm');
  const trade = useTrade();
  const format = useFormat();
  const unit = format.unit('length');
  const known = standardGasket(draft);
  const shown = (held: number | undefined) => (held === undefined ? undefined : format.toShown('length', held));
  const held = (value: number | undefined) => (value === undefined ? undefined : format.toHeld('length', value));
  const choose = (family: (typeof GASKET_FAMILIES_KNOWN)[number]) => {
    const dimensions = standardGasket({ ...draft, family });
    onChange({
      family,
      contactInside_mm: dimensions?.contactInside_mm,
      contactOutside_mm: dimensions?.contactOutside_mm,
      gasketThickness_mm: dimensions?.thickness_mm,
    });
  };
  return (
    <JointFieldGroup legend={text('gasket')}>
      <Select
        label={text('family')}
        value={draft.family}
        onChange={choose}
        options={GASKET_FAMILIES_KNOWN.map((value) => ({ value, label: trade.word('family', value) }))}
      />
      <TextField
        label={text('gasket-detail')}
        optional
        hint={text('gasket-detail-hint')}
        value={draft.gasketDetail}
        onChange={(gasketDetail) => onChange({ gasketDetail })}
      />
      <NumberField
        label={text('gasket-count')}
        hint={draft.kind === 'insert' ? text('gasket-count-insert') : undefined}
        least={0}
        most={4}
        decimals={0}
        value={draft.gasketCount}
        onChange={(gasketCount) => onChange({ gasketCount })}
      />
      <NumberField
        label={text('contact-inside')}
        optional
        unit={unit}
        value={shown(draft.contactInside_mm)}
        onChange={(value) => onChange({ contactInside_mm: held(value) })}
      />
      <NumberField
        label={text('contact-outside')}
        optional
        unit={unit}
        value={shown(draft.contactOutside_mm)}
        onChange={(value) => onChange({ contactOutside_mm: held(value) })}
      />
      <NumberField
        label={text('gasket-thickness')}
        optional
        unit={unit}
        value={shown(draft.gasketThickness_mm)}
        onChange={(value) => onChange({ gasketThickness_mm: held(value) })}
      />
      {known && (
        <p className={`${styles.whole} ${styles.soft}`}>
          {text('gasket-from', { standard: known.gasketStandard, source: known.source })}
        </p>
      )}
    </JointFieldGroup>
  );
}
