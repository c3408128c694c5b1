import type { ShutdownPayload } from '@seatwell/contract';
import { useState } from 'react';
import { FormDialog } from '../../app/form-dialog.tsx';
import { JointField } from '../../app/joint-field.tsx';
import { newId } from '../../app/send-command.ts';
import { useTrade } from '../../app/use-trade.ts';
import { useFactCommand } from '../../offline/use-fact-command.ts';
import { useText } from '../../texts/text-provider.tsx';
import { Select } from '../../ui/select.tsx';
import { TextField } from '../../ui/text-field.tsx';

type Kind = ShutdownPayload<'item-registered'>['kind'];
const kinds = [
  'valve',
  'relief-valve',
  'control-valve',
  'spool',
  'bundle',
  'cover',
  'blind',
] as const satisfies readonly Kind[];

/** Registers what two joints hold between them, such as a valve, or one joint, such as a cover. */
export function RegisterItemDialog({ onClose }: { onClose: () => void }) {
  const text = useText('items');
  const trade = useTrade();
  const register = useFactCommand('item-registered');
  const [itemId] = useState(newId);
  const [tag, setTag] = useState('');
  const [kind, setKind] = useState<Kind | ''>('');
  const [first, setFirst] = useState('');
  const [second, setSecond] = useState('');
  const [description, setDescription] = useState('');
  const jointIds = [...new Set([first, second])].filter((jointId) => jointId !== '');
  const send = () => {
    if (kind === '') return;
    const payload = { itemId, tag: tag.trim(), kind, jointIds, description: description.trim() || null };
    register.mutate({ subjectId: itemId, label: tag.trim(), payload }, { onSuccess: onClose });
  };
  return (
    <FormDialog
      title={text('register')}
      description={text('register-detail')}
      sendLabel={text('register')}
      missing={tag.trim() === '' || kind === '' || first === '' ? text('register-missing') : undefined}
      busy={register.isPending}
      error={register.error}
      onSend={send}
      onClose={onClose}
    >
      <TextField label={text('tag')} value={tag} onChange={setTag} />
      <Select
        label={text('kind')}
        value={kind}
        onChange={setKind}
        options={kinds.map((value) => ({ value, label: trade.word('item', value) }))}
      />
      <JointField label={text('joint')} value={first} onChange={setFirst} />
      <JointField label={text('other-joint')} optional value={second} onChange={setSecond} without={first} />
      <TextField label={text('description')} optional value={description} onChange={setDescription} />
    </FormDialog>
  );
}
