import { useState } from 'react';
import { useText } from '../../texts/text-provider.tsx';
import { Button } from '../../ui/button.tsx';
import { Notice } from '../../ui/notice.tsx';
import { StickyActionBar } from '../../ui/sticky-action-bar.tsx';
import { TextField } from '../../ui/text-field.tsx';
import { AlignmentFields } from './alignment-fields.tsx';
import { BoltingFields } from './bolting-fields.tsx';
import { FactProblem } from './fact-problem.tsx';
import { GasketFields } from './gasket-fields.tsx';
import type { Job } from './job.ts';
import { blankNipUp, mismatches, nipUpLack, nipUpPayload, toBeFitted } from './nip-up-form.ts';
import { PeopleField } from './people-field.tsx';
import { PhotoField } from './photo-field.tsx';
import { useFact } from './use-fact.ts';
import { usePhotos } from './use-photos.ts';
import styles from './work.module.css';

/** Gasket in, aligned, bolts hand tight: what is on the parts is read off and compared. */
export function NipUpTask({ job, onDone }: { job: Job; onDone: () => void }) {
  const text = useText('work');
  const wanted = toBeFitted(job.joint, job.state);
  const [form, setForm] = useState(blankNipUp);
  const [by, setBy] = useState<readonly string[]>(job.people.slice(0, 1).map((each) => each.personId));
  const photos = usePhotos();
  const fact = useFact('nipped-up', { ...job.joint, makeId: job.make.makeId }, onDone);
  const off = mismatches(form, wanted);
  const lack = nipUpLack(form, form.batch.trim() !== '' || photos.photos.length > 0);
  const change = (more: Partial<typeof form>) => setForm((current) => ({ ...current, ...more }));

  let missing: string | undefined;
  if (off.length > 0) missing = text('wrong-gasket');
  else if (lack !== null) missing = text(`nip-up-lacks-${lack}`);
  else if (by.length === 0) missing = text('missing-people');
  else if (photos.sending) missing = text('photo-on-its-way');

  return (
    <div className={styles.form}>
      <GasketFields form={form} wanted={wanted} off={off} onChange={change} />
      <TextField
        label={text('batch')}
        hint={text('batch-hint')}
        value={form.batch}
        onChange={(batch) => change({ batch })}
      />
      <PhotoField label={text('photo-marking')} hint={text('photo-marking-hint')} photos={photos} />
      <BoltingFields form={form} wanted={wanted} onChange={change} />
      <AlignmentFields form={form} job={job} onChange={change} />
      <PeopleField label={text('who-nipped-up')} people={job.people} chosen={by} onChange={setBy} />
      <TextField
        label={text('remark')}
        optional
        lines={2}
        value={form.remark}
        onChange={(remark) => change({ remark })}
      />
      <Notice kind="attention" title={text('not-tight-title')}>
        <p>{text('not-tight')}</p>
      </Notice>
      <FactProblem error={fact.error} busy={fact.busy} onKeepForReview={fact.keepForReview} />
      <StickyActionBar
        actions={
          <Button
            kind="primary"
            size="large"
            wide
            busy={fact.busy}
            disabledReason={missing}
            onClick={() => fact.record(nipUpPayload(form, wanted, photos.hash), { performedBy: by })}
          >
            {text('record-nip-up')}
          </Button>
        }
      />
    </div>
  );
}
