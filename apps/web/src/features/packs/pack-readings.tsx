import type { PackPage } from '@seatwell/contract';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { Table } from '../../ui/table.tsx';
import styles from './packs.module.css';

/** The readings of the test, each with whether it reached the pack's pressure for its time. */
export function PackReadings({ pack }: { pack: PackPage }) {
  const text = useText('packs');
  const format = useFormat();
  return (
    <Table
      caption={text('readings')}
      rows={pack.readings}
      rowKey={(row) => `${row.readAt} ${row.pressure_MPa}`}
      empty={text('no-readings')}
      columns={[
        { key: 'at', header: text('read-at'), rowHeader: true, cell: (row) => format.dayTime(row.readAt) },
        {
          key: 'pressure',
          header: text('pressure'),
          numeric: true,
          cell: (row) => format.quantity('pressure', row.pressure_MPa),
        },
        { key: 'held', header: text('held'), numeric: true, cell: (row) => format.duration(row.held_min) },
        {
          key: 'gauges',
          header: text('gauges'),
          cell: (row) => row.gaugeIds.map((id) => pack.gaugeTags[id] ?? id).join(', '),
        },
        {
          key: 'holds',
          header: text('result'),
          cell: (row) => {
            const leaks = row.results.filter((each) => each.result === 'leak').length;
            if (leaks > 0)
              return <span className={styles.stop}>{text('leaks', { count: leaks, shown: format.count(leaks) })}</span>;
            return text(row.holds ? 'reached' : 'not-reached');
          },
        },
      ]}
    />
  );
}
