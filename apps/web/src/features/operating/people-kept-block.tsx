import type { OperatorStatus, Retention } from '@seatwell/contract';
import { useState } from 'react';
import { addresses } from '../../app/addresses.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { Button } from '../../ui/button.tsx';
import { KeyValues } from '../../ui/key-values.tsx';
import { Link } from '../../ui/link.tsx';
import { Table } from '../../ui/table.tsx';
import styles from './operating.module.css';
import { RetentionDialog } from './retention-dialog.tsx';

/** How long traces of people are kept, and whose names are due to be erased. */
export function PeopleKeptBlock({ retention, leavers }: { retention: Retention; leavers: OperatorStatus['leavers'] }) {
  const text = useText('operating');
  const format = useFormat();
  const [changing, setChanging] = useState(false);
  const { sessionHours, signInDays, leaverDays } = retention;
  return (
    <section className={styles.block}>
      <h2>{text('people-kept')}</h2>
      <KeyValues
        items={[
          {
            name: text('sessions'),
            value: text('sessions-end', { count: sessionHours, shown: format.count(sessionHours) }),
          },
          {
            name: text('wrong-secrets'),
            value: text('addresses-kept', { count: signInDays, shown: format.count(signInDays) }),
          },
          {
            name: text('those-who-left'),
            value:
              leaverDays === null
                ? text('leaver-days-none')
                : text('leaver-days-shown', { count: leaverDays, shown: format.count(leaverDays) }),
          },
        ]}
      />
      <Button onClick={() => setChanging(true)}>{text('change')}</Button>
      {leaverDays !== null && (
        <>
          <Table
            caption={text('leavers')}
            rows={leavers}
            rowKey={(row) => row.person.personId}
            empty={text('leavers-none')}
            columns={[
              {
                key: 'name',
                header: text('name'),
                rowHeader: true,
                cell: (row) => <Link href={addresses.person(row.person.personId)}>{row.person.name}</Link>,
              },
              { key: 'left', header: text('left'), cell: (row) => format.dayTime(row.leftAt) },
            ]}
          />
          <p className={styles.soft}>{text('leavers-detail')}</p>
        </>
      )}
      {changing && <RetentionDialog retention={retention} onClose={() => setChanging(false)} />}
    </section>
  );
}
