import type { PersonRow } from '@seatwell/contract';
import { useSuspenseQuery } from '@tanstack/react-query';
import { useDeferredValue, useState } from 'react';
import { addresses } from '../../app/addresses.ts';
import { peopleQuery } from '../../app/reads.ts';
import { useReasonAgainst } from '../../app/use-reason-against.ts';
import { useTrade } from '../../app/use-trade.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { Button } from '../../ui/button.tsx';
import { Link } from '../../ui/link.tsx';
import { PageHeader } from '../../ui/page-header.tsx';
import { Table } from '../../ui/table.tsx';
import { TextField } from '../../ui/text-field.tsx';
import styles from './people.module.css';
import { PeopleWays } from './people-ways.tsx';
import { peopleFound, qualifiedToday, worstState } from './qualification-state.ts';
import { RegisterPersonDialog } from './register-person-dialog.tsx';

/** Everybody at the site, and what they are qualified for today. */
export function PeoplePage() {
  const reasonAgainst = useReasonAgainst();
  const text = useText('people');
  const trade = useTrade();
  const format = useFormat();
  const { data } = useSuspenseQuery(peopleQuery);
  const [find, setFind] = useState('');
  const [registering, setRegistering] = useState(false);
  const rows = peopleFound(data.rows, useDeferredValue(find));
  const lapsing = data.rows.filter((row) => worstState(row.qualifications) === 'lapsing').length;
  return (
    <>
      <PageHeader
        over={<PeopleWays />}
        title={text('title', { count: data.rows.length, shown: format.count(data.rows.length) })}
        documentTitle={text('people')}
        sub={
          lapsing > 0 ? text('lapsing-count', { count: lapsing, shown: format.count(lapsing) }) : text('none-lapsing')
        }
        actions={
          <Button
            kind="primary"
            disabledReason={reasonAgainst(data.actions, 'person-registered')}
            onClick={() => setRegistering(true)}
          >
            {text('register')}
          </Button>
        }
      />
      <div className={styles.find}>
        <TextField label={text('find')} type="search" value={find} onChange={setFind} />
      </div>
      <Table
        caption={text('people')}
        captionHidden
        rows={rows}
        rowKey={(row) => row.personId}
        empty={text(data.rows.length === 0 ? 'none' : 'none-found')}
        columns={[
          {
            key: 'name',
            header: text('name'),
            rowHeader: true,
            cell: (row) => <Link href={addresses.person(row.personId)}>{row.name ?? text('name-erased')}</Link>,
          },
          { key: 'company', header: text('company'), cell: (row) => row.company },
          { key: 'trade', header: text('trade'), cell: (row) => row.trade },
          { key: 'crews', header: text('crews'), cell: (row) => row.crews.map((crew) => crew.code).join(', ') },
          {
            key: 'for',
            header: text('qualified-for'),
            cell: (row) =>
              qualifiedToday(row)
                .map((each) => trade.word('qualified', each))
                .join(', '),
          },
          { key: 'state', header: text('certificates'), cell: (row) => <Certificates row={row} /> },
          { key: 'account', header: text('account'), cell: (row) => (row.hasAccount ? text('yes') : '') },
        ]}
      />
      {registering && <RegisterPersonDialog onClose={() => setRegistering(false)} />}
    </>
  );
}

function Certificates({ row }: { row: PersonRow }) {
  const text = useText('people');
  const format = useFormat();
  const state = worstState(row.qualifications);
  const first = row.qualifications
    .filter((each) => each.state === state)
    .sort((a, b) => a.validThrough.localeCompare(b.validThrough))[0];
  if (!first || state === 'none') return text('state-none');
  return (
    <span className={styles.state} data-state={state}>
      {state === 'in-date' || state === 'lapsing'
        ? text(`until-${state}`, { day: format.datedDay(first.validThrough) })
        : text(`state-${state}`)}
    </span>
  );
}
