import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { FormDialog } from '../../app/form-dialog.tsx';
import { peopleQuery } from '../../app/reads.ts';
import { newId } from '../../app/send-command.ts';
import { useSiteCommand } from '../../app/use-command.ts';
import { useText } from '../../texts/text-provider.tsx';
import { Combobox } from '../../ui/combobox.tsx';
import { TextField } from '../../ui/text-field.tsx';
import type { AccountRow } from './accounts-page.tsx';

interface Props {
  readonly accounts: readonly AccountRow[];
  readonly onOpened: (accountId: string) => void;
  readonly onClose: () => void;
}

/** Opens an account for a person who is registered. Role and first password follow on the account itself. */
export function OpenAccountDialog({ accounts, onOpened, onClose }: Props) {
  const text = useText('people');
  const people = useQuery(peopleQuery);
  const open = useSiteCommand('account-opened');
  const [accountId] = useState(newId);
  const [personId, setPersonId] = useState('');
  const [email, setEmail] = useState('');
  const taken = new Set(accounts.filter((row) => row.closedAt === null).map((row) => row.person.personId));
  return (
    <FormDialog
      title={text('open-account')}
      sendLabel={text('open-account')}
      missing={personId === '' || !/^\S+@\S+\.\S+$/.test(email) ? text('account-missing') : undefined}
      busy={open.isPending}
      error={open.error ?? people.error}
      onSend={() =>
        open.mutate(
          { subjectId: accountId, payload: { accountId, personId, email } },
          {
            onSuccess: () => {
              onOpened(accountId);
              onClose();
            },
          },
        )
      }
      onClose={onClose}
    >
      <Combobox
        label={text('person')}
        value={personId}
        onChange={setPersonId}
        options={(people.data?.rows ?? [])
          .filter((row) => row.name !== null)
          .map((row) => ({
            value: row.personId,
            label: row.name ?? '',
            detail: row.company,
            disabledReason: taken.has(row.personId) ? text('has-account') : undefined,
          }))}
      />
      <TextField label={text('email')} type="email" value={email} onChange={setEmail} />
    </FormDialog>
  );
}
