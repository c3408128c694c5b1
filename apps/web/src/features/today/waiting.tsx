import type { TodayAnswer } from '@seatwell/contract';
import { addresses } from '../../app/addresses.ts';
import { useTrade } from '../../app/use-trade.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { Link } from '../../ui/link.tsx';
import { Table } from '../../ui/table.tsx';

type SignOff = TodayAnswer['signOffs'][number];

// Some sign-offs are a flag or a page of their own; the others are what a make waits for.
function signOffAddress(shutdownId: string, { waitsFor, role }: SignOff): string {
  if (waitsFor === 'review') return addresses.reviews(shutdownId);
  if (waitsFor === 'hold') return addresses.register(shutdownId, { flag: 'on-hold' });
  return addresses.register(shutdownId, { waitsFor, by: role });
}

/** Decisions that joints wait for now, and whose they are. */
export function Waiting({ shutdownId, rows }: { shutdownId: string; rows: readonly SignOff[] }) {
  const text = useText('today');
  const trade = useTrade();
  const format = useFormat();
  return (
    <Table
      caption={text('waiting')}
      rows={rows.filter((row) => row.count > 0)}
      rowKey={(row) => `${row.waitsFor} ${row.role}`}
      empty={text('nothing-waits')}
      onPhone="table"
      columns={[
        {
          key: 'what',
          header: text('decision'),
          rowHeader: true,
          cell: (row) => <Link href={signOffAddress(shutdownId, row)}>{trade.word('signoff', row.waitsFor)}</Link>,
        },
        { key: 'count', header: text('joints'), numeric: true, cell: (row) => format.count(row.count) },
        {
          key: 'who',
          header: text('whose'),
          cell: (row) =>
            [
              row.role === null ? '' : trade.word('role', row.role),
              row.persons
                .slice(0, 2)
                .map((person) => person.name ?? text('name-erased'))
                .join(', '),
            ]
              .filter(Boolean)
              .join(': '),
        },
      ]}
    />
  );
}
