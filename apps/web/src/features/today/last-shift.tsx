import type { TodayAnswer } from '@seatwell/contract';
import { addresses } from '../../app/addresses.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { Link } from '../../ui/link.tsx';
import { Table } from '../../ui/table.tsx';

/** What the last shift opened, made tight and checked, area by area. */
export function LastShift({ shutdownId, rows }: { shutdownId: string; rows: TodayAnswer['lastShiftByArea'] }) {
  const text = useText('today');
  const format = useFormat();
  const sum = (of: (row: (typeof rows)[number]) => number) =>
    format.count(rows.reduce((total, row) => total + of(row), 0));
  return (
    <Table
      caption={text('last-shift')}
      rows={rows}
      rowKey={(row) => row.area?.areaId ?? 'none'}
      empty={text('last-shift-nothing')}
      columns={[
        {
          key: 'area',
          header: text('area'),
          rowHeader: true,
          footer: text('all-areas'),
          cell: (row) =>
            row.area === null ? (
              text('no-area')
            ) : (
              <Link href={addresses.register(shutdownId, { area: row.area.areaId })}>{row.area.name}</Link>
            ),
        },
        {
          key: 'opened',
          header: text('opened'),
          numeric: true,
          footer: sum((row) => row.opened),
          cell: (row) => format.count(row.opened),
        },
        {
          key: 'tight',
          header: text('tight'),
          numeric: true,
          footer: sum((row) => row.tight),
          cell: (row) => format.count(row.tight),
        },
        {
          key: 'checked',
          header: text('checked'),
          numeric: true,
          footer: sum((row) => row.checked),
          cell: (row) => format.count(row.checked),
        },
      ]}
    />
  );
}
