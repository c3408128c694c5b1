import { GASKET_FAMILIES_KNOWN } from '@seatwell/contract';
import { flangeWords, useTrade } from '../../app/use-trade.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { Combobox } from '../../ui/combobox.tsx';
import { Notice } from '../../ui/notice.tsx';
import { NumberField } from '../../ui/number-field.tsx';
import { Select } from '../../ui/select.tsx';
import { classes, nominalSizes } from './marking-lists.ts';
import type { mismatches, NipUpForm, ToBeFitted } from './nip-up-form.ts';
import styles from './work.module.css';

const purposes = ['final', 'spade-in', 'test', 'temporary'] as const;

export interface GasketFieldsProps {
  readonly form: NipUpForm;
  readonly wanted: ToBeFitted;
  readonly off: ReturnType<typeof mismatches>;
  readonly onChange: (more: Partial<NipUpForm>) => void;
}

/** What must be fitted, and beside it what the marking says: chosen by reading, never confirmed unread. */
export function GasketFields({ form, wanted, off, onChange }: GasketFieldsProps) {
  const text = useText('work');
  const trade = useTrade();
  const format = useFormat();
  const must = [
    trade.word('family', wanted.family),
    wanted.detail,
    trade.flange(wanted.size, wanted.rating),
    trade.word('purpose', wanted.purpose),
    text('gasket-pieces', { count: wanted.count, pieces: format.count(wanted.count) }),
  ].filter(Boolean);
  const error = (what: (typeof off)[number]) => (off.includes(what) ? text('not-what-must-be-fitted') : undefined);
  return (
    <fieldset className={styles.card}>
      <legend className={styles.legend}>{text('gasket')}</legend>
      <p className={styles.wanted}>
        {text('must-be-fitted')} <strong>{must.join(' · ')}</strong>
      </p>
      <p>{text('read-it-off')}</p>
      <div className={styles.pair}>
        <Select
          label={text('marking-family')}
          value={form.family}
          error={error('family')}
          options={GASKET_FAMILIES_KNOWN.map((value) => ({ value, label: trade.word('family', value) }))}
          onChange={(family) => onChange({ family })}
        />
        {form.family !== 'none' && (
          <>
            <Combobox
              label={text('marking-size')}
              value={form.size}
              error={error('size')}
              options={nominalSizes(wanted.size).map((value) => ({ value, label: flangeWords(value, '') }))}
              onChange={(size) => onChange({ size })}
            />
            <Select
              label={text('marking-class')}
              value={form.rating}
              error={error('rating')}
              options={classes(wanted.rating).map((value) => ({ value, label: flangeWords('', value) }))}
              onChange={(rating) => onChange({ rating })}
            />
          </>
        )}
        <Select
          label={text('marking-purpose')}
          value={form.purpose}
          error={error('purpose')}
          options={purposes.map((value) => ({ value, label: trade.word('purpose', value) }))}
          onChange={(purpose) => onChange({ purpose })}
        />
        <NumberField
          label={text('gaskets-in')}
          decimals={0}
          least={0}
          most={4}
          value={form.count}
          onChange={(count) => onChange({ count })}
        />
      </div>
      {off.length > 0 && (
        <Notice kind="stop" title={text('wrong-gasket')} live>
          <p>{text('wrong-gasket-why')}</p>
        </Notice>
      )}
    </fieldset>
  );
}
