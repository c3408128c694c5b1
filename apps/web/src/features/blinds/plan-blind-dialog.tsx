import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { FormDialog } from '../../app/form-dialog.tsx';
import { JointField } from '../../app/joint-field.tsx';
import { choicesQuery } from '../../app/reads.ts';
import { newId } from '../../app/send-command.ts';
import { useCommand } from '../../app/use-command.ts';
import { useShutdownId } from '../../app/use-shutdown.ts';
import { useTrade } from '../../app/use-trade.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { Combobox } from '../../ui/combobox.tsx';
import { DateField } from '../../ui/date-field.tsx';
import { NumberField } from '../../ui/number-field.tsx';
import { RadioCards } from '../../ui/radio-cards.tsx';
import { Select } from '../../ui/select.tsx';
import { TextField } from '../../ui/text-field.tsx';

const types = ['spade', 'spectacle', 'blind-flange', 'test-blind'] as const;
const purposes = ['isolation', 'test'] as const;
const orNull = (typed: string) => (typed.trim() === '' ? null : typed);

/** Plans a blind: where it goes in, why, and by when it must be out. */
export function PlanBlindDialog({ onClose }: { onClose: () => void }) {
  const text = useText('blinds');
  const trade = useTrade();
  const format = useFormat();
  const choices = useQuery(choicesQuery(useShutdownId()));
  const plan = useCommand('blind-planned');
  const [blindId] = useState(newId);
  const [number, setNumber] = useState('');
  const [type, setType] = useState<(typeof types)[number] | ''>('');
  const [purpose, setPurpose] = useState<(typeof purposes)[number] | ''>('');
  const [rating, setRating] = useState('');
  const [thickness, setThickness] = useState<number>();
  const [jointId, setJointId] = useState('');
  const [packId, setPackId] = useState('');
  const [owner, setOwner] = useState('');
  const [outBy, setOutBy] = useState('');
  const send = () => {
    if (type === '' || purpose === '') return;
    plan.mutate(
      {
        subjectId: blindId,
        payload: {
          blindId,
          number,
          type,
          rating: orNull(rating),
          thickness_mm: thickness === undefined ? null : format.toHeld('length', thickness),
          purpose,
          jointId: orNull(jointId),
          packId: orNull(packId),
          owner: orNull(owner),
          outBy: orNull(outBy),
        },
      },
      { onSuccess: onClose },
    );
  };
  return (
    <FormDialog
      title={text('plan')}
      sendLabel={text('save')}
      missing={number.trim() === '' || type === '' || purpose === '' ? text('plan-missing') : undefined}
      busy={plan.isPending}
      error={plan.error ?? choices.error}
      onSend={send}
      onClose={onClose}
    >
      <TextField label={text('number')} value={number} onChange={setNumber} />
      <Select
        label={text('type')}
        value={type}
        onChange={setType}
        options={types.map((value) => ({ value, label: trade.word('blind', value) }))}
      />
      <RadioCards
        label={text('purpose')}
        value={purpose}
        onChange={setPurpose}
        options={purposes.map((value) => ({ value, label: text(`purpose-${value}`) }))}
      />
      <JointField label={text('joint')} optional value={jointId} onChange={setJointId} />
      <Combobox
        label={text('pack')}
        optional
        value={packId}
        onChange={setPackId}
        options={(choices.data?.packs ?? []).map((pack) => ({ value: pack.packId, label: pack.number }))}
      />
      <TextField label={text('rating')} optional value={rating} onChange={setRating} />
      <NumberField
        label={text('thickness')}
        optional
        unit={format.unit('length')}
        value={thickness}
        onChange={setThickness}
      />
      <TextField label={text('owner')} optional value={owner} onChange={setOwner} />
      <DateField label={text('out-by')} optional value={outBy} onChange={setOutBy} />
    </FormDialog>
  );
}
