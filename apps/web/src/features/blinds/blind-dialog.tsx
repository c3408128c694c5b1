import { useState } from 'react';
import { FileField } from '../../app/file-field.tsx';
import { FormDialog } from '../../app/form-dialog.tsx';
import { useFactCommand } from '../../offline/use-fact-command.ts';
import { useText } from '../../texts/text-provider.tsx';
import { Checkbox } from '../../ui/checkbox.tsx';
import { RadioCards } from '../../ui/radio-cards.tsx';
import { TextField } from '../../ui/text-field.tsx';
import type { BlindRow } from './blind-table.tsx';

export type BlindStep = 'blind-in' | 'blind-out' | 'spectacle-turned';

const positions = ['open', 'closed'] as const;

/** Records that a blind went in, came out, or was turned. */
export function BlindDialog({ row, step, onClose }: { row: BlindRow; step: BlindStep; onClose: () => void }) {
  const text = useText('blinds');
  const goIn = useFactCommand('blind-in');
  const comeOut = useFactCommand('blind-out');
  const turn = useFactCommand('spectacle-turned');
  const what = { subjectId: row.blindId, label: row.number };
  const [tagHung, setTagHung] = useState(false);
  const [photo, setPhoto] = useState<string | null>(null);
  const [remark, setRemark] = useState('');
  const [position, setPosition] = useState<(typeof positions)[number] | ''>('');
  const said = remark.trim() === '' ? null : remark;
  const done = { onSuccess: onClose };
  const send = () => {
    if (step === 'blind-in') {
      goIn.mutate({ ...what, payload: { tagHung, photo, remark: said } }, done);
    } else if (step === 'blind-out') {
      comeOut.mutate({ ...what, payload: { photo, remark: said } }, done);
    } else if (position !== '') {
      turn.mutate({ ...what, payload: { position, photo } }, done);
    }
  };
  return (
    <FormDialog
      title={text(`do-${step}-of`, { number: row.number })}
      description={row.joint?.tag}
      sendLabel={text(`do-${step}`)}
      missing={step === 'spectacle-turned' && position === '' ? text('position-needed') : undefined}
      busy={goIn.isPending || comeOut.isPending || turn.isPending}
      error={goIn.error ?? comeOut.error ?? turn.error}
      onSend={send}
      onClose={onClose}
    >
      {step === 'blind-in' && <Checkbox label={text('tag-hung')} checked={tagHung} onChange={setTagHung} />}
      {step === 'spectacle-turned' && (
        <RadioCards
          label={text('position')}
          value={position}
          onChange={setPosition}
          options={positions.map((value) => ({
            value,
            label: text(`position-${value}`),
            detail: text(`position-${value}-detail`),
          }))}
        />
      )}
      <FileField label={text('photo')} onStored={setPhoto} />
      {step !== 'spectacle-turned' && (
        <TextField label={text('remark')} optional lines={2} value={remark} onChange={setRemark} />
      )}
    </FormDialog>
  );
}
