import { useState } from 'react';
import { addresses } from '../../app/addresses.ts';
import { FormDialog } from '../../app/form-dialog.tsx';
import { newId } from '../../app/send-command.ts';
import { useSiteCommand } from '../../app/use-command.ts';
import { useGo } from '../../app/use-go.ts';
import { useText } from '../../texts/text-provider.tsx';
import { TextField } from '../../ui/text-field.tsx';

const orNull = (typed: string) => (typed.trim() === '' ? null : typed);

/** Registers a person; qualifications and an account come after. */
export function RegisterPersonDialog({ onClose }: { onClose: () => void }) {
  const text = useText('people');
  const go = useGo();
  const register = useSiteCommand('person-registered');
  const [personId] = useState(newId);
  const [name, setName] = useState('');
  const [company, setCompany] = useState('');
  const [badge, setBadge] = useState('');
  const [trade, setTrade] = useState('');
  return (
    <FormDialog
      title={text('register')}
      sendLabel={text('save')}
      missing={name.trim() === '' || company.trim() === '' ? text('register-missing') : undefined}
      busy={register.isPending}
      error={register.error}
      onSend={() =>
        register.mutate(
          { subjectId: personId, payload: { personId, name, company, badge: orNull(badge), trade: orNull(trade) } },
          { onSuccess: () => go(addresses.person(personId)) },
        )
      }
      onClose={onClose}
    >
      <TextField label={text('name')} value={name} onChange={setName} />
      <TextField label={text('company')} value={company} onChange={setCompany} />
      <TextField label={text('badge')} optional value={badge} onChange={setBadge} />
      <TextField label={text('trade')} optional value={trade} onChange={setTrade} />
    </FormDialog>
  );
}
