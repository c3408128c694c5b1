import type { SystemsAnswer } from '@seatwell/contract';
import { useSuspenseQuery } from '@tanstack/react-query';
import { addresses } from '../../app/addresses.ts';
import { systemsQuery } from '../../app/reads.ts';
import { useShutdownId } from '../../app/use-shutdown.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { Link } from '../../ui/link.tsx';
import { PageHeader } from '../../ui/page-header.tsx';
import { Table } from '../../ui/table.tsx';
import { fieldAddresses } from '../work/addresses.ts';
import { PackWays } from './pack-ways.tsx';
import styles from './packs.module.css';

type SystemRow = SystemsAnswer['rows'][number];
type Zero = keyof SystemRow['zeros'];

/** Every system with what must be zero before it is handed over. */
export function SystemsPage() {
  const text = useText('packs');
  const format = useFormat();
  const shutdownId = useShutdownId();
  const { data } = useSuspenseQuery(systemsQuery(shutdownId));
  const handedOver = data.rows.filter((row) => row.handedOver).length;
  const zeros: readonly { zero: Zero; href: (row: SystemRow) => string }[] = [
    {
      zero: 'notProven',
      href: (row) => addresses.register(shutdownId, { system: row.systemId, stageTo: 'checked' }),
    },
    { zero: 'temporaryBlindsIn', href: () => addresses.blinds(shutdownId, { state: 'in' }) },
    {
      zero: 'temporaryFittings',
      href: (row) => addresses.register(shutdownId, { system: row.systemId, flag: 'temporary-fitting' }),
    },
    { zero: 'unclosedA', href: (row) => addresses.register(shutdownId, { system: row.systemId, flag: 'punch-A' }) },
    { zero: 'unclosedB', href: (row) => addresses.register(shutdownId, { system: row.systemId, flag: 'punch-B' }) },
  ];
  return (
    <>
      <PageHeader
        over={<PackWays shutdownId={shutdownId} />}
        title={text('systems-title', {
          count: data.rows.length,
          handed: format.count(handedOver),
          total: format.count(data.rows.length),
        })}
        documentTitle={text('systems')}
        sub={text('systems-sub')}
      />
      <Table
        caption={text('systems')}
        captionHidden
        rows={data.rows}
        rowKey={(row) => row.systemId}
        empty={text('no-systems')}
        columns={[
          {
            key: 'code',
            header: text('system'),
            rowHeader: true,
            cell: (row) => <Link href={addresses.register(shutdownId, { system: row.systemId })}>{row.code}</Link>,
          },
          { key: 'name', header: text('name'), cell: (row) => row.name },
          { key: 'area', header: text('area'), cell: (row) => row.area?.name },
          { key: 'total', header: text('joints'), numeric: true, cell: (row) => format.count(row.total) },
          ...zeros.map(({ zero, href }) => ({
            key: zero,
            header: text(`zero-${zero}`),
            numeric: true,
            cell: (row: SystemRow) =>
              row.zeros[zero] === 0 ? (
                format.count(0)
              ) : (
                <Link className={styles.attention} href={href(row)}>
                  {format.count(row.zeros[zero])}
                </Link>
              ),
          })),
          {
            key: 'handed',
            header: text('handed-over'),
            cell: (row) =>
              row.handedOver ? (
                text('yes')
              ) : (
                <Link href={fieldAddresses.handOver(shutdownId, row.systemId)}>{text('to-hand-over')}</Link>
              ),
          },
        ]}
      />
    </>
  );
}
