import { useState } from 'react';
import { newId } from '../../app/send-command.ts';
import { useText } from '../../texts/text-provider.tsx';
import { Button } from '../../ui/button.tsx';
import { Checkbox } from '../../ui/checkbox.tsx';
import { Notice } from '../../ui/notice.tsx';
import { RadioCards } from '../../ui/radio-cards.tsx';
import { Select } from '../../ui/select.tsx';
import { StickyActionBar } from '../../ui/sticky-action-bar.tsx';
import { TextField } from '../../ui/text-field.tsx';
import { FactProblem } from './fact-problem.tsx';
import type { Job } from './job.ts';
import { useFact } from './use-fact.ts';
import styles from './work.module.css';

const moments = ['test', 'start-up', 'service'] as const;

/** A leak: the joint is tight and leaking, and an A item stands against it. */
export function LeakTask({ job, onDone }: { job: Job; onDone: () => void }) {
  const text = useText('work');
  const packs = job.make.packs;
  const [when, setWhen] = useState<(typeof moments)[number] | ''>('');
  const [packId, setPackId] = useState(packs.length === 1 ? (packs[0]?.packId ?? '') : '');
  const [where, setWhere] = useState('');
  const [underPressure, setUnderPressure] = useState(true);
  const [remark, setRemark] = useState('');
  const [punchId] = useState(newId);
  const fact = useFact('leak-found', { ...job.joint, makeId: job.make.makeId }, onDone);
  let missing: string | undefined;
  if (when === '') missing = text('missing-leak-when');
  else if (remark.trim() === '') missing = text('missing-leak-remark');
  const record = () =>
    when !== '' &&
    fact.record({
      when,
      where: where.trim() || null,
      underPressure,
      packId: when === 'test' && packId !== '' ? packId : null,
      punchId,
      remark: remark.trim(),
    });
  return (
    <div className={styles.form}>
      <Notice kind="stop" title={text('leak-stand-clear-title')}>
        <p>{text('leak-stand-clear')}</p>
      </Notice>
      <RadioCards
        label={text('leak-when')}
        value={when}
        options={moments.map((value) => ({ value, label: text(`leak-${value}`) }))}
        onChange={setWhen}
      />
      {when === 'test' && packs.length > 0 && (
        <Select
          label={text('test-pack')}
          value={packId}
          options={packs.map((pack) => ({ value: pack.packId, label: pack.number }))}
          onChange={setPackId}
        />
      )}
      <Checkbox
        label={text('leak-under-pressure')}
        detail={text('leak-under-pressure-detail')}
        checked={underPressure}
        onChange={setUnderPressure}
      />
      <TextField label={text('leak-where')} hint={text('leak-where-hint')} optional value={where} onChange={setWhere} />
      <TextField label={text('leak-remark')} lines={3} value={remark} onChange={setRemark} />
      <FactProblem error={fact.error} busy={fact.busy} onKeepForReview={fact.keepForReview} />
      <StickyActionBar
        actions={
          <Button kind="stop" size="large" wide busy={fact.busy} disabledReason={missing} onClick={record}>
            {text('record-leak')}
          </Button>
        }
      />
    </div>
  );
}
