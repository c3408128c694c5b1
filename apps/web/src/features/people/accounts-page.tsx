import type { AccountsAnswer } from '@seatwell/contract';
import { useQuery, useSuspenseQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { addresses } from '../../app/addresses.ts';
import { accountsQuery, choicesQuery } from '../../app/reads.ts';
import { useReasonAgainst } from '../../app/use-reason-against.ts';
import { useCurrentShutdown } from '../../app/use-shutdown.ts';
import { useTrade } from '../../app/use-trade.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { Button } from '../../ui/button.tsx';
import { Link } from '../../ui/link.tsx';
import { PageHeader } from '../../ui/page-header.tsx';
import { Table } from '../../ui/table.tsx';
import { AccountSheet } from './account-sheet.tsx';
import { OpenAccountDialog } from './open-account-dialog.tsx';
import styles from './people.module.css';
import { PeopleWays } from './people-ways.tsx';
import { useReachWords } from './reach-words.ts';

export type AccountRow = AccountsAnswer['rows'][number];

/** Who may sign in, in which roles, how far they reach and until when. */
export function AccountsPage() {
  const reasonAgainst = useReasonAgainst();
  const text = useText('people');
  const format = useFormat();
  const { data } = useSuspenseQuery(accountsQuery);
  const [opening, setOpening] = useState(false);
  const [shownId, setShownId] = useState<string | null>(null);
  const open = data.rows.filter((row) => row.closedAt === null).length;
  const shown = data.rows.find((row) => row.accountId === shownId);
  return (
    <>
      <PageHeader
        over={<PeopleWays />}
        title={text('accounts-title', { count: open, shown: format.count(open) })}
        documentTitle={text('accounts')}
        sub={text('accounts-sub')}
        actions={
          <Button
            kind="primary"
            disabledReason={reasonAgainst(data.actions, 'account-opened')}
            onClick={() => setOpening(true)}
          >
            {text('open-account')}
          </Button>
        }
      />
      <Table
        caption={text('accounts')}
        captionHidden
        rows={data.rows}
        rowKey={(row) => row.accountId}
        columns={[
          {
            key: 'person',
            header: text('name'),
            rowHeader: true,
            cell: (row) => (
              <Link href={addresses.person(row.person.personId)}>{row.person.name ?? text('name-erased')}</Link>
            ),
          },
          { key: 'email', header: text('email'), cell: (row) => row.email },
          { key: 'roles', header: text('roles'), cell: (row) => <Roles row={row} /> },
          { key: 'state', header: text('state'), cell: (row) => <AccountState row={row} /> },
          {
            key: 'change',
            header: text('action'),
            cell: (row) => (
              <Button
                kind="quiet"
                label={text('change-of', { name: row.person.name ?? row.email })}
                onClick={() => setShownId(row.accountId)}
              >
                {text('change')}
              </Button>
            ),
          },
        ]}
      />
      {opening && <OpenAccountDialog accounts={data.rows} onOpened={setShownId} onClose={() => setOpening(false)} />}
      {shown && !opening && (
        <AccountSheet account={shown} accounts={data.rows} actions={data.actions} onClose={() => setShownId(null)} />
      )}
    </>
  );
}

function Roles({ row }: { row: AccountRow }) {
  const text = useText('people');
  const trade = useTrade();
  const format = useFormat();
  const shutdown = useCurrentShutdown();
  const choices = useQuery({ ...choicesQuery(shutdown?.shutdownId ?? ''), enabled: shutdown !== undefined });
  const reachWords = useReachWords(choices.data);
  const inForce = row.grants.filter((grant) => grant.inForce);
  if (inForce.length === 0) return text('no-roles');
  return (
    <ul className={styles.plain}>
      {inForce.map((grant) => (
        <li key={grant.grantId}>
          {trade.word('role', grant.role)}{' '}
          <span className={styles.soft}>
            {[reachWords(grant.reach), grant.endsOn && text('until-day', { day: format.datedDay(grant.endsOn) })]
              .filter(Boolean)
              .join(', ')}
          </span>
        </li>
      ))}
    </ul>
  );
}

function AccountState({ row }: { row: AccountRow }) {
  const text = useText('people');
  const format = useFormat();
  if (row.closedAt !== null) return text('closed-at', { at: format.dayTime(row.closedAt) });
  if (row.lockedUntil !== null && new Date(row.lockedUntil) > new Date())
    return (
      <span className={styles.state} data-state="lapsing">
        {text('locked-until', { at: format.time(row.lockedUntil) })}
      </span>
    );
  return text('open');
}
