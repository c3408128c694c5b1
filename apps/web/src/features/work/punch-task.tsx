import { useState } from 'react';
import { newId } from '../../app/send-command.ts';
import { useFactCommand } from '../../offline/use-fact-command.ts';
import { useText } from '../../texts/text-provider.tsx';
import { Button } from '../../ui/button.tsx';
import { RadioCards } from '../../ui/radio-cards.tsx';
import { StickyActionBar } from '../../ui/sticky-action-bar.tsx';
import { TextField } from '../../ui/text-field.tsx';
import { useAnnouncer } from '../../ui/toast.tsx';
import { FactProblem } from './fact-problem.tsx';
import type { Job } from './job.ts';
import styles from './work.module.css';

const categories = ['A', 'B', 'C'] as const;

/** Something is to be put right: a punch item against the joint. */
export function PunchTask({ job, onDone }: { job: Job; onDone: () => void }) {
  const text = useText('work');
  const waits = useText('offline');
  const { toast } = useAnnouncer();
  const [punchId] = useState(newId);
  const [category, setCategory] = useState<(typeof categories)[number] | ''>('');
  const [words, setWords] = useState('');
  const [owner, setOwner] = useState('');
  const command = useFactCommand('punch-raised');
  let missing: string | undefined;
  if (category === '') missing = text('missing-category');
  else if (words.trim() === '') missing = text('missing-punch-text');
  const record = () => {
    if (category === '') return;
    command.mutate(
      {
        subjectId: punchId,
        label: job.joint.tag,
        lane: job.joint.jointId,
        payload: {
          punchId,
          category,
          text: words.trim(),
          jointId: job.joint.jointId,
          packId: null,
          systemId: null,
          owner: owner.trim() || null,
        },
      },
      {
        onSuccess: ({ disposition }) => {
          toast({ message: disposition === 'waiting' ? waits('kept-here') : text('recorded') });
          onDone();
        },
      },
    );
  };
  return (
    <div className={styles.form}>
      <RadioCards
        label={text('punch-category')}
        value={category}
        options={categories.map((value) => ({
          value,
          label: text(`punch-${value}`),
          detail: text(`punch-${value}-detail`),
        }))}
        onChange={setCategory}
      />
      <TextField label={text('punch-text')} lines={3} value={words} onChange={setWords} />
      <TextField label={text('punch-owner')} optional value={owner} onChange={setOwner} />
      <FactProblem error={command.error} />
      <StickyActionBar
        actions={
          <Button kind="primary" size="large" wide busy={command.isPending} disabledReason={missing} onClick={record}>
            {text('record-punch')}
          </Button>
        }
      />
    </div>
  );
}
