import { useState } from 'react';
import { useText } from '../../texts/text-provider.tsx';
import { Button } from '../../ui/button.tsx';
import { Checkbox } from '../../ui/checkbox.tsx';
import { Notice } from '../../ui/notice.tsx';
import { Select } from '../../ui/select.tsx';
import { StickyActionBar } from '../../ui/sticky-action-bar.tsx';
import { TextField } from '../../ui/text-field.tsx';
import { FactProblem } from './fact-problem.tsx';
import type { Job } from './job.ts';
import { PeopleField } from './people-field.tsx';
import { PhotoField } from './photo-field.tsx';
import { useFact } from './use-fact.ts';
import { usePhotos } from './use-photos.ts';
import styles from './work.module.css';

interface Check {
  readonly personId: string;
  readonly how: string;
}

const none: Check = { personId: '', how: '' };

/** First break of a joint: zero energy proven twice, the caution read, the ends covered. */
export function OpenTask({ job, onDone }: { job: Job; onDone: () => void }) {
  const text = useText('work');
  const [cautionRead, setCautionRead] = useState(false);
  const [checks, setChecks] = useState<readonly [Check, Check]>([none, none]);
  const [covered, setCovered] = useState(false);
  const [by, setBy] = useState<readonly string[]>(job.people.slice(0, 1).map((each) => each.personId));
  const [remark, setRemark] = useState('');
  const photos = usePhotos();
  const fact = useFact('opened', { ...job.joint, makeId: job.make.makeId }, onDone);

  const change = (index: 0 | 1, check: Check) => setChecks(index === 0 ? [check, checks[1]] : [checks[0], check]);
  const named = checks.filter((check) => check.personId !== '' && check.how.trim() !== '');
  let missing: string | undefined;
  if (!cautionRead) missing = text('missing-caution');
  else if (named.length < 2) missing = text('missing-zero-energy');
  else if (checks[0].personId === checks[1].personId) missing = text('missing-zero-energy-two');
  else if (by.length === 0) missing = text('missing-people');
  else if (photos.sending) missing = text('photo-on-its-way');

  const record = () =>
    fact.record(
      {
        zeroEnergyChecks: named.map((check) => ({ personId: check.personId, how: check.how.trim() })),
        cautionShown: cautionRead,
        openEndsCovered: covered,
        photo: photos.hash,
        remark: remark.trim() || null,
      },
      { performedBy: by },
    );
  return (
    <div className={styles.form}>
      <Notice kind="stop" title={text('first-break-title')}>
        <ul className={styles.cautions}>
          <li>{text('caution-prove-twice')}</li>
          <li>{text('caution-far-side')}</li>
          <li>{text('caution-residue')}</li>
          <li>{text('caution-fire-line')}</li>
        </ul>
        <Checkbox label={text('caution-read')} checked={cautionRead} onChange={setCautionRead} />
      </Notice>
      {([0, 1] as const).map((index) => (
        <fieldset key={index} className={styles.group}>
          <legend className={styles.legend}>{text(index === 0 ? 'zero-energy-first' : 'zero-energy-second')}</legend>
          <div className={styles.pair}>
            <Select
              label={text('who')}
              value={checks[index].personId}
              options={job.people
                .filter((person) => index === 0 || person.personId !== checks[0].personId)
                .map((person) => ({ value: person.personId, label: person.name }))}
              onChange={(personId) => change(index, { ...checks[index], personId })}
            />
            <TextField
              label={text('zero-energy-how')}
              hint={text('zero-energy-hint')}
              value={checks[index].how}
              onChange={(how) => change(index, { ...checks[index], how })}
            />
          </div>
        </fieldset>
      ))}
      <PeopleField label={text('who-opened')} people={job.people} chosen={by} onChange={setBy} />
      <Checkbox
        label={text('ends-covered')}
        detail={text('ends-covered-why')}
        checked={covered}
        onChange={setCovered}
      />
      <PhotoField label={text('photo-opening')} hint={text('photo-opening-hint')} photos={photos} />
      <TextField label={text('remark')} optional lines={2} value={remark} onChange={setRemark} />
      <FactProblem error={fact.error} busy={fact.busy} onKeepForReview={fact.keepForReview} />
      <StickyActionBar
        actions={
          <Button kind="primary" size="large" wide busy={fact.busy} disabledReason={missing} onClick={record}>
            {text('record-open')}
          </Button>
        }
      />
    </div>
  );
}
