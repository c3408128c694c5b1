import { type Reach, ROLES, type Role } from '@seatwell/contract';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { FormDialog } from '../../app/form-dialog.tsx';
import { choicesQuery } from '../../app/reads.ts';
import { newId } from '../../app/send-command.ts';
import { useMe } from '../../app/session.ts';
import { useSiteCommand } from '../../app/use-command.ts';
import { useCurrentShutdown } from '../../app/use-shutdown.ts';
import { useTrade } from '../../app/use-trade.ts';
import { useText } from '../../texts/text-provider.tsx';
import { Combobox } from '../../ui/combobox.tsx';
import { DateField } from '../../ui/date-field.tsx';
import { RadioCards } from '../../ui/radio-cards.tsx';
import { Select } from '../../ui/select.tsx';
import type { AccountRow } from './accounts-page.tsx';

const kinds = ['site', 'shutdown', 'area', 'pack', 'crew', 'own-assignments'] as const;
type Kind = (typeof kinds)[number];

/** The reach of what was chosen; undefined while a part is missing. */
export function reachOf(kind: Kind | '', id: string): Reach | undefined {
  if (kind === '') return undefined;
  if (kind === 'site' || kind === 'own-assignments') return { kind };
  return id === '' ? undefined : { kind, id };
}

/** Grants a role with its reach, and with an end where it has one. */
export function GrantDialog({ account, onClose }: { account: AccountRow; onClose: () => void }) {
  const text = useText('people');
  const trade = useTrade();
  const { shutdowns } = useMe();
  const shutdown = useCurrentShutdown();
  const choices = useQuery({ ...choicesQuery(shutdown?.shutdownId ?? ''), enabled: shutdown !== undefined });
  const grant = useSiteCommand('role-granted');
  const [grantId] = useState(newId);
  const [role, setRole] = useState<Role | ''>('');
  const [kind, setKind] = useState<Kind | ''>('');
  const [id, setId] = useState('');
  const [endsOn, setEndsOn] = useState('');
  const reach = reachOf(kind, id);
  const things =
    kind === 'shutdown'
      ? shutdowns.map((each) => ({ value: each.shutdownId, label: each.name }))
      : kind === 'area'
        ? (choices.data?.areas ?? []).map((each) => ({ value: each.areaId, label: each.name }))
        : kind === 'pack'
          ? (choices.data?.packs ?? []).map((each) => ({ value: each.packId, label: each.number }))
          : kind === 'crew'
            ? (choices.data?.crews ?? []).map((each) => ({
                value: each.crewId,
                label: each.code,
                detail: each.company,
              }))
            : undefined;
  return (
    <FormDialog
      title={text('grant-title', { name: account.person.name ?? account.email })}
      sendLabel={text('grant-role')}
      missing={role === '' || reach === undefined ? text('grant-missing') : undefined}
      busy={grant.isPending}
      error={grant.error ?? choices.error}
      onSend={() =>
        role !== '' &&
        reach !== undefined &&
        grant.mutate(
          {
            subjectId: grantId,
            payload: { grantId, accountId: account.accountId, role, reach, endsOn: endsOn === '' ? null : endsOn },
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
        options={ROLES.map((value) => ({ value, label: trade.word('role', value) }))}
      />
      <RadioCards
        label={text('reach')}
        value={kind}
        onChange={(next) => {
          setKind(next);
          setId('');
        }}
        options={kinds.map((value) => ({ value, label: text(`reach-${value}`) }))}
      />
      {things && <Combobox label={text('reach-which')} value={id} onChange={setId} options={things} />}
      <DateField label={text('ends-on')} optional value={endsOn} onChange={setEndsOn} />
    </FormDialog>
  );
}
