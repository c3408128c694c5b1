import type { PackSummary } from '@seatwell/contract';
import { addresses } from '../../app/addresses.ts';
import { useTrade } from '../../app/use-trade.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { Link } from '../../ui/link.tsx';
import { Table } from '../../ui/table.tsx';
import { progressOf } from '../areas/progress.ts';
import { useStopperWords } from '../today/use-stopper-words.ts';
import { Late } from './late.tsx';
import styles from './packs.module.css';

/** Packs in the order of their planned day. */
export function PackTable({ shutdownId, rows }: { shutdownId: string; rows: readonly PackSummary[] }) {
  const text = useText('packs');
  const trade = useTrade();
  const format = useFormat();
  return (
    <Table
      caption={text('packs')}
      captionHidden
      rows={rows}
      rowKey={(row) => row.packId}
      empty={text('none-behind')}
      columns={[
        {
          key: 'number',
          header: text('pack'),
          rowHeader: true,
          cell: (row) => <Link href={addresses.pack(shutdownId, row.packId)}>{row.number}</Link>,
        },
        {
          key: 'state',
          header: text('state'),
          cell: (row) => (
            <span className={styles.state} data-state={row.state}>
              {trade.word('packstate', row.state)}
            </span>
          ),
        },
        {
          key: 'day',
          header: text('planned'),
          cell: (row) =>
            row.plannedOn !== null && (
              <>
                <span className={styles.state}>{format.calendarDay(row.plannedOn)}</span>
                <Late plannedOn={row.plannedOn} proven={row.state === 'proven'} />
              </>
            ),
        },
        {
          key: 'where',
          header: text('where'),
          cell: (row) => [row.area?.name, row.system?.code].filter(Boolean).join(' · '),
        },
        {
          key: 'test',
          header: text('test'),
          cell: (row) =>
            text('test-of', {
              way: trade.word('proof', row.way),
              pressure: format.quantity('pressure', row.pressure_MPa),
            }),
        },
        {
          key: 'tight',
          header: text('tight'),
          numeric: true,
          cell: (row) => {
            const { tight, checked } = progressOf(row.stages);
            return (
              <Link href={addresses.register(shutdownId, { pack: row.packId })}>
                {text('of', { count: format.count(tight + checked), total: format.count(row.total) })}
              </Link>
            );
          },
        },
        { key: 'stops', header: text('stops'), cell: (row) => <Stops row={row} /> },
      ]}
    />
  );
}

function Stops({ row }: { row: PackSummary }) {
  const text = useText('packs');
  const format = useFormat();
  const words = useStopperWords();
  const [first, ...more] = row.stoppers;
  if (!first) return text(row.state === 'proven' ? 'nothing-left' : 'nothing-stops');
  return (
    <>
      {words.stopper(first)}
      <span className={styles.soft}>
        {' '}
        {[
          words.who(first.who),
          more.length > 0 ? text('more', { count: more.length, shown: format.count(more.length) }) : '',
        ]
          .filter(Boolean)
          .join(' · ')}
      </span>
    </>
  );
}
