import type { PackPage } from '@seatwell/contract';
import { addresses } from '../../app/addresses.ts';
import { useTrade } from '../../app/use-trade.ts';
import { useText } from '../../texts/text-provider.tsx';
import { StageWord } from '../../ui/drawing.tsx';
import { Link } from '../../ui/link.tsx';
import { Table } from '../../ui/table.tsx';
import styles from './packs.module.css';

/** The joints of the pack: inside, boundary, reinstated after the test. */
export function PackMembers({ shutdownId, pack }: { shutdownId: string; pack: PackPage }) {
  const text = useText('packs');
  const trade = useTrade();
  return (
    <Table
      caption={text('joints')}
      rows={pack.members}
      rowKey={(row) => `${row.makeId} ${row.role}`}
      empty={text('no-joints')}
      columns={[
        {
          key: 'tag',
          header: text('joint'),
          rowHeader: true,
          cell: (row) => <Link href={addresses.joint(shutdownId, row.jointId)}>{row.tag}</Link>,
        },
        { key: 'flange', header: text('flange'), cell: (row) => trade.flange(row.size, row.rating) },
        { key: 'role', header: text('role'), cell: (row) => text(`role-${row.role}`) },
        {
          key: 'stage',
          header: text('stage'),
          cell: (row) =>
            row.cancelled ? (
              text('cancelled')
            ) : (
              <StageWord stage={row.stage}>{trade.word('stage', row.stage)}</StageWord>
            ),
        },
        {
          key: 'waits',
          header: text('waits'),
          cell: (row) => (row.waitsFor.code === 'nothing' ? '' : trade.waitsFor(row.waitsFor)),
        },
        {
          key: 'result',
          header: text('result'),
          cell: (row) =>
            row.result === null ? (
              ''
            ) : (
              <span className={row.result === 'leak' ? styles.stop : undefined}>{text(`result-${row.result}`)}</span>
            ),
        },
      ]}
    />
  );
}
