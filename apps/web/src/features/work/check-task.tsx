import { useState } from 'react';
import { useSigner } from '../../app/sign.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { Button } from '../../ui/button.tsx';
import { RadioCards } from '../../ui/radio-cards.tsx';
import { SignDialog } from '../../ui/sign-dialog.tsx';
import { StickyActionBar } from '../../ui/sticky-action-bar.tsx';
import { TextField } from '../../ui/text-field.tsx';
import { FactProblem } from './fact-problem.tsx';
import type { Job } from './job.ts';
import { JointRecord } from './joint-record.tsx';
import { PeopleField } from './people-field.tsx';
import { useRulesProblem } from './rules-problem.ts';
import { useFact } from './use-fact.ts';
import styles from './work.module.css';

export type OwnLevel = 'self' | 'chargehand';

/** The check by the crew itself (two who did the work), or by a chargehand who recorded no pass of it. */
export function CheckTask({ job, level, onDone }: { job: Job; level: OwnLevel; onDone: () => void }) {
  const text = useText('work');
  const format = useFormat();
  const signer = useSigner(level === 'self' ? 'technician' : 'chargehand', 'inspector');
  const workers = job.state.workedBy.map((personId) => ({
    personId,
    name: job.page.names[personId] ?? text('name-erased'),
    isMe: job.people.some((each) => each.isMe && each.personId === personId),
  }));
  const [by, setBy] = useState<readonly string[]>(workers.filter((each) => each.isMe).map((each) => each.personId));
  const [outcome, setOutcome] = useState<'accepted' | 'rejected' | ''>('');
  const [reason, setReason] = useState('');
  const [signing, setSigning] = useState(false);
  const problem = useRulesProblem();
  const fact = useFact('checked', { ...job.joint, makeId: job.make.makeId }, () => {
    setSigning(false);
    onDone();
  });
  let missing: string | undefined;
  if (outcome === '') missing = text('missing-outcome');
  else if (outcome === 'rejected' && reason.trim() === '') missing = text('missing-rejection');
  else if (level === 'self' && by.length < 2) missing = text('missing-two');

  const meaning = text(outcome === 'rejected' ? 'check-meaning-rejected' : `check-meaning-${level}`);
  return (
    <div className={styles.form}>
      <p>{text(level === 'self' ? 'self-check-how' : 'chargehand-check-how')}</p>
      <JointRecord job={job} />
      <RadioCards
        label={text('check-outcome')}
        value={outcome}
        options={[
          { value: 'accepted' as const, label: text('check-accept'), detail: text('check-accept-detail') },
          { value: 'rejected' as const, label: text('check-reject'), detail: text('check-reject-detail') },
        ]}
        onChange={setOutcome}
      />
      {outcome === 'rejected' && (
        <TextField label={text('rejection-reason')} lines={2} value={reason} onChange={setReason} />
      )}
      {level === 'self' && (
        <PeopleField
          label={text('self-check-two')}
          hint={text('self-check-two-hint')}
          people={workers}
          chosen={by}
          onChange={setBy}
        />
      )}
      {!signing && <FactProblem error={fact.error} />}
      <StickyActionBar
        actions={
          <Button
            kind={outcome === 'rejected' ? 'stop' : 'primary'}
            size="large"
            wide
            disabledReason={missing}
            onClick={() => {
              fact.reset();
              setSigning(true);
            }}
          >
            {text('check-sign')}
          </Button>
        }
      />
      <SignDialog
        open={signing}
        onOpenChange={setSigning}
        title={text('check-sign-title')}
        meaning={meaning}
        signer={signer}
        items={[
          {
            id: job.make.makeId,
            label: job.joint.tag,
            detail: text('check-item', {
              passes: format.count(job.state.passes.filter((pass) => pass.finished).length),
            }),
          },
        ]}
        signLabel={text('check-sign')}
        busy={fact.busy}
        problem={problem(fact.error)}
        onSign={({ secret }) =>
          outcome !== '' &&
          fact.record(
            { level, outcome, reason: outcome === 'rejected' ? reason.trim() : null },
            { signature: { secret, meaning }, performedBy: level === 'self' ? by : [] },
          )
        }
      />
    </div>
  );
}
