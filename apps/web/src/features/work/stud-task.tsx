import { useState } from 'react';
import { useText } from '../../texts/text-provider.tsx';
import { Button } from '../../ui/button.tsx';
import { Notice } from '../../ui/notice.tsx';
import { StickyActionBar } from '../../ui/sticky-action-bar.tsx';
import { TextField } from '../../ui/text-field.tsx';
import { BoltsField, boltNumbers } from './bolts-field.tsx';
import { FactProblem } from './fact-problem.tsx';
import type { Job } from './job.ts';
import { PeopleField } from './people-field.tsx';
import { useFact } from './use-fact.ts';
import styles from './work.module.css';

/** A stud was replaced: the joint is part tight again, its neighbours are due. */
export function StudTask({ job, onDone }: { job: Job; onDone: () => void }) {
  const text = useText('work');
  const count = job.joint.bolting?.count ?? 400;
  const [bolts, setBolts] = useState('');
  const [grade, setGrade] = useState(job.state.fitted?.boltGrade ?? '');
  const [reason, setReason] = useState('');
  const [by, setBy] = useState<readonly string[]>(job.people.slice(0, 1).map((each) => each.personId));
  const fact = useFact('stud-replaced', { ...job.joint, makeId: job.make.makeId }, onDone);
  const numbers = boltNumbers(bolts, count) ?? [];
  let missing: string | undefined;
  if (numbers.length === 0) missing = text('missing-bolts');
  else if (grade.trim() === '') missing = text('missing-grade');
  else if (reason.trim() === '') missing = text('missing-reason');
  return (
    <div className={styles.form}>
      <Notice kind="attention" title={text('stud-means-title')}>
        <p>{text('stud-means')}</p>
      </Notice>
      <BoltsField label={text('stud-bolts')} count={count} value={bolts} onChange={setBolts} />
      <TextField label={text('stud-grade')} value={grade} onChange={setGrade} />
      <TextField label={text('reason')} lines={2} value={reason} onChange={setReason} />
      <PeopleField label={text('who-did')} people={job.people} chosen={by} onChange={setBy} />
      <FactProblem error={fact.error} busy={fact.busy} onKeepForReview={fact.keepForReview} />
      <StickyActionBar
        actions={
          <Button
            kind="primary"
            size="large"
            wide
            busy={fact.busy}
            disabledReason={missing}
            onClick={() =>
              fact.record({ bolts: [...numbers], grade: grade.trim(), reason: reason.trim() }, { performedBy: by })
            }
          >
            {text('record-stud')}
          </Button>
        }
      />
    </div>
  );
}
