import type { Role } from '@seatwell/contract';
import { useState } from 'react';
import { newId } from '../../app/send-command.ts';
import { useReasonAgainst } from '../../app/use-reason-against.ts';
import { useTrade } from '../../app/use-trade.ts';
import { useText } from '../../texts/text-provider.tsx';
import { Button } from '../../ui/button.tsx';
import { Select } from '../../ui/select.tsx';
import { StickyActionBar } from '../../ui/sticky-action-bar.tsx';
import { TextField } from '../../ui/text-field.tsx';
import { FactProblem } from './fact-problem.tsx';
import type { Job } from './job.ts';
import { useFact } from './use-fact.ts';
import styles from './work.module.css';

const releasers = ['inspector', 'engineer', 'coordinator'] as const satisfies readonly Role[];

/** Stops all work on the joint until a named role releases it. */
export function HoldTask({ job, onDone }: { job: Job; onDone: () => void }) {
  const reasonAgainst = useReasonAgainst();
  const text = useText('work');
  const trade = useTrade();
  const [holdId] = useState(newId);
  const [reason, setReason] = useState('');
  const [releasedBy, setReleasedBy] = useState<(typeof releasers)[number] | ''>('');
  const fact = useFact('hold-placed', { ...job.joint, makeId: null }, onDone);
  const mayNot = reasonAgainst(job.page.actions, 'hold-placed');
  let missing = mayNot;
  if (missing === undefined && reason.trim() === '') missing = text('missing-reason');
  else if (missing === undefined && releasedBy === '') missing = text('missing-releaser');
  return (
    <div className={styles.form}>
      <p>{text('hold-means')}</p>
      <TextField label={text('hold-reason')} lines={3} value={reason} onChange={setReason} />
      <Select
        label={text('hold-releaser')}
        value={releasedBy}
        options={releasers.map((value) => ({ value, label: trade.word('role', value) }))}
        onChange={setReleasedBy}
      />
      <FactProblem error={fact.error} />
      <StickyActionBar
        actions={
          <Button
            kind="stop"
            size="large"
            wide
            busy={fact.busy}
            disabledReason={missing}
            onClick={() => releasedBy !== '' && fact.record({ holdId, reason: reason.trim(), releasedBy })}
          >
            {text('record-hold')}
          </Button>
        }
      />
    </div>
  );
}
