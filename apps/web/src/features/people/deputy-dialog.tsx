import type { Role } from '@seatwell/contract';
import { useState } from 'react';
import { FormDialog } from '../../app/form-dialog.tsx';
import { useSiteCommand } from '../../app/use-command.ts';
import { useTrade } from '../../app/use-trade.ts';
import { useText } from '../../texts/text-provider.tsx';
import { Combobox } from '../../ui/combobox.tsx';
import { DateField } from '../../ui/date-field.tsx';
import { Select } from '../../ui/select.tsx';
import type { AccountRow } from './accounts-page.tsx';
import styles from './people.module.css';

interface Props {
  readonly account: AccountRow;
  readonly accounts: readonly AccountRow[];
  readonly onClose: () => void;
}

/** Names a deputy for a role, from a day until a day. The deputy signs in their own name. */
export function DeputyDialog({ account, accounts, onClose }: Props) {
  const text = useText('people');
  const trade = useTrade();
  const name = useSiteCommand('deputy-named');
  const held = [...new Set(account.grants.filter((grant) => grant.inForce).map((grant) => grant.role))];
  const [role, setRole] = useState<Role | ''>(held.length === 1 ? (held[0] ?? '') : '');
  const [deputyAccountId, setDeputy] = useState('');
  const [from, setFrom] = useState('');
  const [until, setUntil] = useState('');
  const missing = role === '' || deputyAccountId === '' || from === '' || until === '' || until < from;
  return (
    <FormDialog
      title={text('deputy-title', { name: account.person.name ?? account.email })}
      description={text('deputy-detail')}
      sendLabel={text('name-deputy')}
      missing={missing ? text('deputy-missing') : undefined}
      busy={name.isPending}
      error={name.error}
      onSend={() =>
        role !== '' &&
        name.mutate(
          {
            subjectId: account.accountId,
            payload: { accountId: account.accountId, deputyAccountId, role, from, until },
          },
          { onSuccess: onClose },
        )
      }
      onClose={onClose}
    >
      <Select
        label={text('role')}
        value={role}
        onChange={setRole}
        options={held.map((value) => ({ value, label: trade.word('role', value) }))}
      />
      <Combobox
        label={text('deputy')}
        value={deputyAccountId}
        onChange={setDeputy}
        options={accounts
          .filter((row) => row.accountId !== account.accountId && row.closedAt === null)
          .map((row) => ({ value: row.accountId, label: row.person.name ?? row.email, detail: row.email }))}
      />
      <div className={styles.pair}>
        <DateField label={text('from')} value={from} onChange={setFrom} />
        <DateField label={text('until')} value={until} onChange={setUntil} />
      </div>
    </FormDialog>
  );
}
