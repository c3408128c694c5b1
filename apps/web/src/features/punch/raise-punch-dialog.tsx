import type { PunchCategory } from '@seatwell/contract';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { FormDialog } from '../../app/form-dialog.tsx';
import { JointField } from '../../app/joint-field.tsx';
import { choicesQuery } from '../../app/reads.ts';
import { newId } from '../../app/send-command.ts';
import { useShutdownId } from '../../app/use-shutdown.ts';
import { useFactCommand } from '../../offline/use-fact-command.ts';
import { useText } from '../../texts/text-provider.tsx';
import { Combobox } from '../../ui/combobox.tsx';
import { RadioCards } from '../../ui/radio-cards.tsx';
import { TextField } from '../../ui/text-field.tsx';

const categories = ['A', 'B', 'C'] as const;
const subjects = ['joint', 'pack', 'system'] as const;
type Subject = (typeof subjects)[number];

/** Raises a punch item on a joint, a test pack or a system. */
export function RaisePunchDialog({ onClose }: { onClose: () => void }) {
  const text = useText('punch');
  const shutdownId = useShutdownId();
  const choices = useQuery(choicesQuery(shutdownId));
  const raise = useFactCommand('punch-raised');
  const [punchId] = useState(newId);
  const [category, setCategory] = useState<PunchCategory | ''>('');
  const [what, setWhat] = useState('');
  const [owner, setOwner] = useState('');
  const [subject, setSubject] = useState<Subject>('joint');
  const [id, setId] = useState('');
  const missing = category === '' || what.trim() === '' || id === '';
  const of = (each: Subject) => (subject === each ? id : null);
  return (
    <FormDialog
      title={text('raise')}
      sendLabel={text('raise')}
      missing={missing ? text('raise-missing') : undefined}
      busy={raise.isPending}
      error={raise.error ?? choices.error}
      onSend={() =>
        category !== '' &&
        raise.mutate(
          {
            subjectId: punchId,
            label: what,
            ...(subject === 'joint' ? { lane: id } : {}),
            payload: {
              punchId,
              category,
              text: what,
              jointId: of('joint'),
              packId: of('pack'),
              systemId: of('system'),
              owner: owner.trim() === '' ? null : owner,
            },
          },
          { onSuccess: onClose },
        )
      }
      onClose={onClose}
    >
      <RadioCards
        label={text('category')}
        value={category}
        onChange={setCategory}
        options={categories.map((value) => ({ value, label: value, detail: text(`category-${value}`) }))}
      />
      <TextField label={text('item')} lines={3} value={what} onChange={setWhat} />
      <RadioCards
        label={text('on')}
        value={subject}
        onChange={(next) => {
          setSubject(next);
          setId('');
        }}
        options={subjects.map((value) => ({ value, label: text(`on-${value}`) }))}
      />
      {subject === 'joint' && <JointField label={text('on-joint')} value={id} onChange={setId} />}
      {subject === 'pack' && (
        <Combobox
          label={text('on-pack')}
          value={id}
          onChange={setId}
          options={(choices.data?.packs ?? []).map((pack) => ({ value: pack.packId, label: pack.number }))}
        />
      )}
      {subject === 'system' && (
        <Combobox
          label={text('on-system')}
          value={id}
          onChange={setId}
          options={(choices.data?.systems ?? []).map((each) => ({
            value: each.systemId,
            label: each.code,
            detail: each.name,
          }))}
        />
      )}
      <TextField label={text('owner')} optional hint={text('owner-hint')} value={owner} onChange={setOwner} />
    </FormDialog>
  );
}
