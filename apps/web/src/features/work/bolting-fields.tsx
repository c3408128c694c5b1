import { BOLTING_GRADES } from '@seatwell/calc';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { Checkbox } from '../../ui/checkbox.tsx';
import { Combobox } from '../../ui/combobox.tsx';
import { NumberField } from '../../ui/number-field.tsx';
import { RadioCards } from '../../ui/radio-cards.tsx';
import { TextField } from '../../ui/text-field.tsx';
import type { NipUpForm, ToBeFitted } from './nip-up-form.ts';
import styles from './work.module.css';

export interface BoltingFieldsProps {
  readonly form: NipUpForm;
  readonly wanted: ToBeFitted;
  readonly onChange: (more: Partial<NipUpForm>) => void;
}

/** Grade, condition and count of the bolts as they are fitted, and the lubricant that the target assumes. */
export function BoltingFields({ form, wanted, onChange }: BoltingFieldsProps) {
  const text = useText('work');
  const format = useFormat();
  const grades = [...new Set([...(wanted.boltGrade === null ? [] : [wanted.boltGrade]), ...BOLTING_GRADES])].sort();
  const must = [
    wanted.boltCount === null ? null : text('bolts-count', { bolts: format.count(wanted.boltCount) }),
    wanted.boltGrade,
    wanted.boltCondition === null ? null : text(`bolting-${wanted.boltCondition}`),
  ].filter((part) => part !== null);
  const gradeOff = form.boltGrade !== '' && wanted.boltGrade !== null && form.boltGrade !== wanted.boltGrade;
  return (
    <fieldset className={styles.card}>
      <legend className={styles.legend}>{text('bolting-and-lubricant')}</legend>
      <p className={styles.wanted}>
        {text('must-be-fitted')} <strong>{must.join(' · ')}</strong>
      </p>
      <div className={styles.pair}>
        <Combobox
          label={text('bolt-grade')}
          value={form.boltGrade}
          error={gradeOff ? text('grade-not-as-target') : undefined}
          options={grades.map((value) => ({ value, label: value }))}
          onChange={(boltGrade) => onChange({ boltGrade })}
        />
        <NumberField
          label={text('bolt-count')}
          decimals={0}
          least={3}
          most={400}
          value={form.boltCount}
          onChange={(boltCount) => onChange({ boltCount })}
        />
      </div>
      <RadioCards
        label={text('bolting-condition')}
        value={form.boltCondition}
        options={(['new', 'reused'] as const).map((value) => ({ value, label: text(`bolting-${value}`) }))}
        onChange={(boltCondition) => onChange({ boltCondition })}
      />
      <Checkbox
        label={text('temporary-bolts')}
        detail={text('temporary-bolts-detail')}
        checked={form.temporaryBolts}
        onChange={(temporaryBolts) => onChange({ temporaryBolts })}
      />
      <RadioCards
        label={text('lubricant')}
        value={form.lubricant}
        options={[
          {
            value: 'as-target' as const,
            label: wanted.lubricant ?? text('lubricant-unknown'),
            detail: text('lubricant-as-target'),
            disabledReason: wanted.lubricant === null ? text('no-target-yet') : undefined,
          },
          { value: 'other' as const, label: text('lubricant-other'), detail: text('lubricant-other-detail') },
        ]}
        onChange={(lubricant) => onChange({ lubricant })}
      />
      {form.lubricant === 'other' && (
        <TextField
          label={text('lubricant-name')}
          value={form.otherLubricant}
          onChange={(otherLubricant) => onChange({ otherLubricant })}
        />
      )}
    </fieldset>
  );
}
