import { facesOf, gasketOf, whyMeasured } from '@seatwell/workflow';
import { useState } from 'react';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { Button } from '../../ui/button.tsx';
import { Notice } from '../../ui/notice.tsx';
import { RadioCards } from '../../ui/radio-cards.tsx';
import { StickyActionBar } from '../../ui/sticky-action-bar.tsx';
import { TextField } from '../../ui/text-field.tsx';
import { FaceCard } from './face-card.tsx';
import { blankFace, type FaceForm, faceLack, isOverLimit, limitsFor, toReading } from './face-check.ts';
import { FactProblem } from './fact-problem.tsx';
import type { Job } from './job.ts';
import { PeopleField } from './people-field.tsx';
import { PhotoField } from './photo-field.tsx';
import { useFact } from './use-fact.ts';
import { usePhotos } from './use-photos.ts';
import styles from './work.module.css';

/** Every face of the stack and the bolting: accepted, or rejected with a reason. */
export function FacesTask({ job, onDone }: { job: Job; onDone: () => void }) {
  const text = useText('work');
  const format = useFormat();
  const { joint, state, settings } = job;
  const count = facesOf(joint, state);
  const reasons = whyMeasured({ joint, settings });
  const groove = joint.kind === 'ring-joint' || joint.specification.flange.facing === 'ring-joint';
  const demands = { measured: reasons.length > 0, groove };
  const limits = limitsFor(gasketOf(joint, state));
  const [faces, setFaces] = useState<readonly FaceForm[]>(() => Array.from({ length: count }, () => blankFace));
  const [bolting, setBolting] = useState<'new' | 'reused' | ''>('');
  const [boltingOk, setBoltingOk] = useState<'yes' | 'no' | ''>('');
  const [remark, setRemark] = useState('');
  const [by, setBy] = useState<readonly string[]>(job.people.slice(0, 1).map((each) => each.personId));
  const photos = usePhotos();
  const fact = useFact('faces-inspected', { ...joint, makeId: job.make.makeId }, onDone);

  const accepted = faces.every((face) => face.accepted === 'yes') && boltingOk === 'yes';
  const rejected = faces.some((face) => face.accepted === 'no') || boltingOk === 'no';
  const lacking = faces.findIndex((face) => faceLack(face, demands) !== null);
  const lack = faces[lacking] ? faceLack(faces[lacking], demands) : null;
  const needsRemark = rejected || faces.some((face) => isOverLimit(limits, face));

  let missing: string | undefined;
  if (lack !== null) missing = text(`face-lacks-${lack}`, { number: format.count(lacking + 1) });
  else if (bolting === '' || boltingOk === '') missing = text('missing-bolting');
  else if (needsRemark && remark.trim() === '') missing = text(rejected ? 'missing-rejection' : 'missing-over-limit');
  else if (by.length === 0) missing = text('missing-people');
  else if (photos.sending) missing = text('photo-on-its-way');

  const record = () => {
    if (bolting === '') return;
    fact.record(
      {
        faces: faces.map((face, index) =>
          toReading(index === 0 ? { ...face, photo: photos.hash } : face, index + 1, demands),
        ),
        bolting: { condition: bolting, accepted: boltingOk === 'yes' },
        accepted,
        remark: remark.trim() || null,
      },
      { performedBy: by },
    );
  };
  return (
    <div className={styles.form}>
      {reasons.length > 0 && (
        <Notice kind="attention" title={text('measured-title')}>
          <p>{text('measured-because', { reasons: reasons.join(', ') })}</p>
        </Notice>
      )}
      {count > 2 && <p>{text('many-faces', { count: format.count(count) })}</p>}
      {faces.map((face, index) => (
        <FaceCard
          // biome-ignore lint/suspicious/noArrayIndexKey: a face is its place in the stack
          key={index}
          number={index + 1}
          count={count}
          face={face}
          demands={demands}
          limits={limits}
          onChange={(changed) => setFaces(faces.map((each, at) => (at === index ? changed : each)))}
        />
      ))}
      {limits && <p className={styles.soft}>{text('limits-from', { source: limits.limits.source })}</p>}
      <PhotoField label={text('photo-faces')} photos={photos} />
      <fieldset className={styles.card}>
        <legend className={styles.legend}>{text('bolting')}</legend>
        <RadioCards
          label={text('bolting-condition')}
          value={bolting}
          options={(['new', 'reused'] as const).map((value) => ({ value, label: text(`bolting-${value}`) }))}
          onChange={setBolting}
        />
        <RadioCards
          label={text('bolting-decision')}
          value={boltingOk}
          options={[
            { value: 'yes' as const, label: text('accept-bolting'), detail: text('accept-bolting-detail') },
            { value: 'no' as const, label: text('reject-bolting') },
          ]}
          onChange={setBoltingOk}
        />
      </fieldset>
      <PeopleField label={text('who-inspected')} people={job.people} chosen={by} onChange={setBy} />
      <TextField
        label={text(rejected ? 'rejection-reason' : 'remark')}
        optional={!needsRemark}
        lines={2}
        value={remark}
        onChange={setRemark}
      />
      <FactProblem error={fact.error} busy={fact.busy} onKeepForReview={fact.keepForReview} />
      <StickyActionBar
        actions={
          <Button
            kind={rejected ? 'stop' : 'primary'}
            size="large"
            wide
            busy={fact.busy}
            disabledReason={missing}
            onClick={record}
          >
            {text(rejected ? 'record-rejection' : 'record-faces')}
          </Button>
        }
      />
    </div>
  );
}
