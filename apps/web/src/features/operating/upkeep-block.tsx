import type { UpkeepRun } from '@seatwell/contract';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { Table } from '../../ui/table.tsx';
import styles from './operating.module.css';

/** The last backup, restore and verification. */
export function UpkeepBlock({ runs }: { runs: readonly UpkeepRun[] }) {
  const text = useText('operating');
  const format = useFormat();
  const came = ({ file, size_bytes, events, findings, outcome }: UpkeepRun): string =>
    outcome === 'failed'
      ? (findings[0] ?? '')
      : [
          file,
          size_bytes === null ? null : format.bytes(size_bytes),
          events === null ? null : text('events-shown', { count: events, shown: format.count(events) }),
        ]
          .filter((part) => part !== null)
          .join(' · ');
  if (runs.length === 0)
    return (
      <section className={styles.block}>
        <h2>{text('upkeep')}</h2>
        <p>{text('upkeep-none')}</p>
      </section>
    );
  return (
    <section className={styles.block}>
      <Table
        caption={text('upkeep')}
        rows={runs}
        rowKey={(run) => run.kind}
        columns={[
          { key: 'kind', header: text('last'), rowHeader: true, cell: (run) => text(run.kind) },
          { key: 'ended', header: text('ended'), cell: (run) => format.dayTime(run.endedAt) },
          { key: 'outcome', header: text('state'), cell: (run) => text(run.outcome) },
          {
            key: 'came',
            header: text('problem'),
            cell: (run) => <span className={styles.long}>{came(run)}</span>,
          },
        ]}
      />
    </section>
  );
}
