import { BOLTING_GRADES } from '@seatwell/calc';
import { FACINGS, STANDARDS } from '@seatwell/contract';
import { useEffect, useMemo } from 'react';
import { useSaid } from '../../app/use-said.ts';
import { useTrade } from '../../app/use-trade.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { Combobox } from '../../ui/combobox.tsx';
import { Notice } from '../../ui/notice.tsx';
import { NumberField } from '../../ui/number-field.tsx';
import { RadioCards } from '../../ui/radio-cards.tsx';
import { Select } from '../../ui/select.tsx';
import { TextField } from '../../ui/text-field.tsx';
import styles from './joint-form.module.css';
import { type DraftProps, JointFieldGroup } from './joint-form.tsx';
import { withoutFlange } from './joint-limits.ts';
import { ratingsOf, sizesOf, standardFlange } from './standard-flange.ts';

/** Flange and bolting: size and rating by the standard, which fills the bolts in. */
export function FlangeFields({ draft, onChange }: DraftProps) {
  const text = useText('jointForm');
  const said = useSaid('calculation');
  const trade = useTrade();
  const format = useFormat();
  const { standard, size, rating, boltCount, thread } = draft;
  const custom = standard === 'custom';
  const found = useMemo(() => standardFlange(draft), [draft]);
  const fills = found !== undefined && 'boltCount' in found ? found : undefined;

  // biome-ignore lint/correctness/useExhaustiveDependencies: the standard fills in when its keys change, not over what is typed
  useEffect(() => {
    if (fills && (boltCount === undefined || thread === ''))
      onChange({ boltCount: fills.boltCount, thread: fills.thread });
  }, [standard, size, rating, fills?.boltCount, fills?.thread]);

  // A new key means another flange: what the standard filled in before does not belong to it.
  const key = (part: Partial<typeof draft>) =>
    onChange({ ...part, boltCount: undefined, thread: '', limits: withoutFlange(draft.limits) });
  const differs =
    fills && boltCount !== undefined && thread !== '' && (boltCount !== fills.boltCount || thread !== fills.thread);

  return (
    <JointFieldGroup legend={text('flange-and-bolts')}>
      <Select
        label={text('standard')}
        value={standard}
        onChange={(value) => key({ standard: value, size: '', rating: '' })}
        options={STANDARDS.map((value) => ({ value, label: trade.word('standard', value) }))}
      />
      {custom ? (
        <TextField label={text('size')} value={size} onChange={(value) => onChange({ size: value })} />
      ) : (
        <Combobox
          label={text('size')}
          value={size}
          onChange={(value) => key({ size: value })}
          options={sizesOf(standard).map((value) => ({ value, label: trade.flange(value, '') }))}
        />
      )}
      {custom ? (
        <TextField label={text('rating')} optional value={rating} onChange={(value) => onChange({ rating: value })} />
      ) : (
        <Select
          label={text('rating')}
          value={rating}
          onChange={(value) => key({ rating: value })}
          options={ratingsOf(standard, size).map((value) => ({ value, label: trade.flange('', value) }))}
        />
      )}
      <Select
        label={text('facing')}
        value={draft.facing}
        onChange={(facing) => onChange({ facing })}
        options={FACINGS.map((value) => ({ value, label: trade.word('facing', value) }))}
      />
      {found && 'asks' in found && (
        <div className={styles.whole}>
          <RadioCards
            label={text('bolt-count-asked', { flange: trade.flange(size, rating) })}
            value=""
            onChange={(count) => onChange({ boltCount: Number(count), thread: '' })}
            options={found.asks.map((count) => ({
              value: String(count),
              label: text('bolts-of', { count: format.count(count) }),
            }))}
          />
        </div>
      )}
      <NumberField
        label={text('bolt-count')}
        least={3}
        most={400}
        decimals={0}
        value={boltCount}
        onChange={(value) => onChange({ boltCount: value })}
      />
      <TextField label={text('thread')} value={thread} onChange={(value) => onChange({ thread: value })} />
      <Combobox
        label={text('grade')}
        optional
        value={draft.grade}
        valueLabel={draft.grade}
        onChange={(grade) => onChange({ grade })}
        options={BOLTING_GRADES.map((grade) => ({ value: grade, label: grade }))}
      />
      <TextField
        label={text('nut-grade')}
        optional
        value={draft.nutGrade}
        onChange={(nutGrade) => onChange({ nutGrade })}
      />
      <NumberField
        label={text('stud-length')}
        optional
        unit={format.unit('length')}
        value={draft.studLength_mm === undefined ? undefined : format.toShown('length', draft.studLength_mm)}
        onChange={(shown) =>
          onChange({ studLength_mm: shown === undefined ? undefined : format.toHeld('length', shown) })
        }
      />
      {found && 'refused' in found && (
        <div className={styles.whole}>
          <Notice kind="attention" title={text('not-in-standard')}>
            <p>{found.refused.map((each) => said(each)).join(' ')}</p>
          </Notice>
        </div>
      )}
      {differs && (
        <div className={styles.whole}>
          <Notice kind="attention" title={text('contradicts-standard')}>
            <p>{text('contradicts-standard-detail', { count: format.count(fills.boltCount), thread: fills.thread })}</p>
          </Notice>
        </div>
      )}
      {fills?.notes.map((note) => (
        <p key={note.code} className={styles.whole}>
          {said(note)}
        </p>
      ))}
    </JointFieldGroup>
  );
}
