import { useState } from 'react';
import { useText } from '../../texts/text-provider.tsx';
import { Button } from '../../ui/button.tsx';
import { Checkbox } from '../../ui/checkbox.tsx';
import { Notice } from '../../ui/notice.tsx';
import { RadioCards } from '../../ui/radio-cards.tsx';
import { StickyActionBar } from '../../ui/sticky-action-bar.tsx';
import { TextField } from '../../ui/text-field.tsx';
import { BoltsField, boltNumbers } from './bolts-field.tsx';
import { FactProblem } from './fact-problem.tsx';
import type { Job } from './job.ts';
import { PeopleField } from './people-field.tsx';
import { useFact } from './use-fact.ts';
import styles from './work.module.css';

/** Bolts were loosened without opening the joint. */
export function LoosenTask({ job, onDone }: { job: Job; onDone: () => void }) {
  const text = useText('work');
  const count = job.joint.bolting?.count ?? 400;
  const [cautionRead, setCautionRead] = useState(false);
  const [extent, setExtent] = useState<'some' | 'all' | ''>('');
  const [bolts, setBolts] = useState('');
  const [reason, setReason] = useState('');
  const [by, setBy] = useState<readonly string[]>(job.people.slice(0, 1).map((each) => each.personId));
  const fact = useFact('loosened', { ...job.joint, makeId: job.make.makeId }, onDone);
  const numbers = extent === 'some' ? (boltNumbers(bolts, count) ?? []) : [];
  let missing: string | undefined;
  if (!cautionRead) missing = text('missing-caution');
  else if (extent === '') missing = text('missing-extent');
  else if (extent === 'some' && numbers.length === 0) missing = text('missing-bolts');
  else if (reason.trim() === '') missing = text('missing-reason');
  const record = () =>
    extent !== '' && fact.record({ extent, bolts: [...numbers], reason: reason.trim() }, { performedBy: by });
  return (
    <div className={styles.form}>
      <Notice kind="stop" title={text('pressurised-title')}>
        <p>{text('pressurised')}</p>
        <Checkbox label={text('caution-read')} checked={cautionRead} onChange={setCautionRead} />
      </Notice>
      <RadioCards
        label={text('loosen-extent')}
        value={extent}
        options={(['some', 'all'] as const).map((value) => ({
          value,
          label: text(`loosen-${value}`),
          detail: text(`loosen-${value}-detail`),
        }))}
        onChange={setExtent}
      />
      {extent === 'some' && <BoltsField label={text('loosen-bolts')} count={count} value={bolts} onChange={setBolts} />}
      <TextField label={text('reason')} lines={2} value={reason} onChange={setReason} />
      <PeopleField label={text('who-did')} people={job.people} chosen={by} onChange={setBy} />
      <FactProblem error={fact.error} busy={fact.busy} onKeepForReview={fact.keepForReview} />
      <StickyActionBar
        actions={
          <Button kind="primary" size="large" wide busy={fact.busy} disabledReason={missing} onClick={record}>
            {text('record-loosened')}
          </Button>
        }
      />
    </div>
  );
}
