import type { OperatorStatus } from '@seatwell/contract';
import { ErrorNotice } from '../../app/error-notice.tsx';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { Button } from '../../ui/button.tsx';
import { KeyValues } from '../../ui/key-values.tsx';
import { Table } from '../../ui/table.tsx';
import styles from './operating.module.css';
import { useOperatorAction } from './use-operator-action.ts';

/** Who is kept from signing in, where wrong secrets came from, and the way back for both. */
export function SignInBlock({ signIn }: { signIn: OperatorStatus['signIn'] }) {
  const text = useText('operating');
  const format = useFormat();
  const act = useOperatorAction();
  return (
    <section className={styles.block}>
      <h2>{text('sign-in')}</h2>
      <KeyValues
        items={[
          {
            name: text('sessions'),
            value: text('sessions-open', { count: signIn.sessions, shown: format.count(signIn.sessions) }),
          },
          ...(signIn.locked.length === 0 ? [{ name: text('locked'), value: text('locked-none') }] : []),
          ...(signIn.addresses.length === 0 ? [{ name: text('wrong-secrets'), value: text('addresses-none') }] : []),
        ]}
      />
      <ErrorNotice error={act.error} />
      {signIn.locked.length > 0 && <LockedAccounts rows={signIn.locked} act={act} />}
      {signIn.addresses.length > 0 && <Addresses rows={signIn.addresses} act={act} />}
    </section>
  );
}

interface Acting {
  readonly act: ReturnType<typeof useOperatorAction>;
}

function LockedAccounts({ rows, act }: Acting & { rows: OperatorStatus['signIn']['locked'] }) {
  const text = useText('operating');
  const format = useFormat();
  return (
    <Table
      caption={text('locked')}
      rows={rows}
      rowKey={(row) => row.accountId}
      columns={[
        { key: 'name', header: text('name'), rowHeader: true, cell: (row) => row.person.name ?? row.email },
        { key: 'until', header: text('locked-until'), cell: (row) => format.dayTime(row.lockedUntil) },
        {
          key: 'unlock',
          header: text('action'),
          cell: (row) => (
            <Button
              kind="quiet"
              label={text('unlock-of', { name: row.person.name ?? row.email })}
              onClick={() => act.mutate({ path: `/accounts/${row.accountId}/unlock` })}
            >
              {text('unlock')}
            </Button>
          ),
        },
      ]}
    />
  );
}

function Addresses({ rows, act }: Acting & { rows: OperatorStatus['signIn']['addresses'] }) {
  const text = useText('operating');
  const format = useFormat();
  return (
    <Table
      caption={text('addresses')}
      rows={rows}
      rowKey={(row) => row.address}
      columns={[
        { key: 'address', header: text('address'), rowHeader: true, cell: (row) => row.address },
        { key: 'failures', header: text('failures'), numeric: true, cell: (row) => format.count(row.failures) },
        { key: 'last', header: text('last'), cell: (row) => format.dayTime(row.lastAt) },
        {
          key: 'blocked',
          header: text('state'),
          cell: (row) => row.blockedUntil && text('blocked-until', { at: format.time(row.blockedUntil) }),
        },
        {
          key: 'unlock',
          header: text('action'),
          cell: (row) =>
            row.blockedUntil && (
              <Button
                kind="quiet"
                label={text('unlock-of', { name: row.address })}
                onClick={() => act.mutate({ path: '/addresses/unlock', body: { address: row.address } })}
              >
                {text('unlock')}
              </Button>
            ),
        },
      ]}
    />
  );
}
