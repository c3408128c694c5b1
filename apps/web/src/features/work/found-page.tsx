import { useSuspenseQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { addresses } from '../../app/addresses.ts';
import { choicesQuery } from '../../app/reads.ts';
import { newId } from '../../app/send-command.ts';
import { useGo } from '../../app/use-go.ts';
import { useShutdownId } from '../../app/use-shutdown.ts';
import { flangeWords } from '../../app/use-trade.ts';
import { useText } from '../../texts/text-provider.tsx';
import { Button } from '../../ui/button.tsx';
import { Combobox } from '../../ui/combobox.tsx';
import { Link } from '../../ui/link.tsx';
import { PageHeader } from '../../ui/page-header.tsx';
import { Select } from '../../ui/select.tsx';
import { StickyActionBar } from '../../ui/sticky-action-bar.tsx';
import { TextField } from '../../ui/text-field.tsx';
import { FactProblem } from './fact-problem.tsx';
import { classes, nominalSizes } from './marking-lists.ts';
import { PhotoField } from './photo-field.tsx';
import { useFact } from './use-fact.ts';
import { usePhotos } from './use-photos.ts';
import styles from './work.module.css';

/** A joint that is at the plant and not in the register: raised with a temporary number, worked as urgent. */
export function FoundPage() {
  const text = useText('found');
  const go = useGo();
  const shutdownId = useShutdownId();
  const { data: choices } = useSuspenseQuery(choicesQuery(shutdownId));
  const [ids] = useState(() => ({ jointId: newId(), placeId: newId(), makeId: newId() }));
  const [number, setNumber] = useState('');
  const [nearest, setNearest] = useState('');
  const [areaId, setAreaId] = useState('');
  const [naming, setNaming] = useState<'NPS' | 'DN'>('NPS');
  const [size, setSize] = useState('');
  const [rating, setRating] = useState('');
  const [remark, setRemark] = useState('');
  const photos = usePhotos();
  const subject = { jointId: ids.jointId, makeId: null, tag: number.trim() };
  const fact = useFact('joint-found', subject, ({ disposition }) =>
    // Without signal the joint has no page yet.
    go(disposition === 'waiting' ? addresses.myJoints(shutdownId) : addresses.joint(shutdownId, ids.jointId)),
  );
  let missing: string | undefined;
  if (number.trim() === '') missing = text('missing-number');
  else if (nearest.trim() === '') missing = text('missing-nearest');
  else if (photos.sending) missing = text('photo-on-its-way');
  const record = () =>
    fact.record({
      placeId: ids.placeId,
      makeId: ids.makeId,
      temporaryNumber: number.trim(),
      nearest: nearest.trim(),
      areaId: areaId || null,
      size: size || null,
      rating: rating || null,
      photo: photos.hash,
      remark: remark.trim() || null,
    });
  return (
    <div className={styles.page}>
      <PageHeader
        title={text('title')}
        over={<Link href={addresses.myJoints(shutdownId)}>{text('to-my-joints')}</Link>}
        sub={text('sub')}
      />
      <div className={styles.form}>
        <TextField label={text('number')} hint={text('number-hint')} value={number} onChange={setNumber} />
        <TextField label={text('nearest')} hint={text('nearest-hint')} value={nearest} onChange={setNearest} />
        <PhotoField label={text('photo')} photos={photos} />
        <div className={styles.pair}>
          <Select
            label={text('area')}
            optional
            value={areaId}
            options={choices.areas.map((area) => ({ value: area.areaId, label: area.code, detail: area.name }))}
            onChange={setAreaId}
          />
          <Select
            label={text('naming')}
            value={naming}
            options={[
              { value: 'NPS' as const, label: text('naming-NPS') },
              { value: 'DN' as const, label: text('naming-DN') },
            ]}
            onChange={(next) => {
              setNaming(next);
              setSize('');
              setRating('');
            }}
          />
          <Combobox
            label={text('size')}
            optional
            value={size}
            options={nominalSizes(naming === 'DN' ? 'DN100' : '').map((value) => ({
              value,
              label: flangeWords(value, ''),
            }))}
            onChange={setSize}
          />
          <Select
            label={text('rating')}
            optional
            value={rating}
            options={classes(naming === 'DN' ? 'PN16' : '').map((value) => ({ value, label: flangeWords('', value) }))}
            onChange={setRating}
          />
        </div>
        <TextField label={text('remark')} optional lines={2} value={remark} onChange={setRemark} />
        <FactProblem error={fact.error} />
        <StickyActionBar
          actions={
            <Button kind="primary" size="large" wide busy={fact.busy} disabledReason={missing} onClick={record}>
              {text('record')}
            </Button>
          }
        />
      </div>
    </div>
  );
}
