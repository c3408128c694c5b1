import type { AreaProgress, SystemsAnswer, TodayAnswer } from '@seatwell/contract';
import { addresses } from '../../app/addresses.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { Link } from '../../ui/link.tsx';
import { Table } from '../../ui/table.tsx';
import { openA, type ReportLine, reportLine, sumRow } from './sum-row.ts';

interface Props {
  readonly shutdownId: string;
  readonly rows: readonly AreaProgress[];
  readonly systems: SystemsAnswer['rows'];
  readonly today: TodayAnswer;
}

type Figure = keyof ReportLine;

/** Area by area, with the sum of the shutdown at the foot. */
export function AreaTable({ shutdownId, rows, systems, today }: Props) {
  const text = useText('report');
  const format = useFormat();
  const sum = sumRow(rows, today);
  const figures: readonly { figure: Figure; query?: Record<string, string> }[] = [
    { figure: 'total', query: {} },
    { figure: 'planned' },
    { figure: 'tight', query: { stageFrom: 'tight' } },
    { figure: 'checked', query: { stageFrom: 'checked' } },
    { figure: 'proven', query: { stageFrom: 'proven' } },
    { figure: 'waiting' },
    { figure: 'partTight', query: { stage: 'part-tight' } },
    { figure: 'lapsing' },
    { figure: 'missing' },
  ];
  return (
    <Table
      caption={text('by-area')}
      rows={rows}
      rowKey={(row) => row.area?.areaId ?? 'none'}
      onPhone="table"
      columns={[
        {
          key: 'area',
          header: text('area'),
          rowHeader: true,
          footer: text('all'),
          cell: (row) => row.area?.name ?? text('no-area'),
        },
        ...figures.map(({ figure, query }) => ({
          key: figure,
          header: text(`figure-${figure}`),
          numeric: true,
          footer: format.count(sum[figure]),
          cell: (row: AreaProgress) => {
            const shown = format.count(reportLine(row)[figure]);
            if (query === undefined || row.area === null) return shown;
            return <Link href={addresses.register(shutdownId, { area: row.area.areaId, ...query })}>{shown}</Link>;
          },
        })),
        {
          key: 'a-items',
          header: text('a-items'),
          numeric: true,
          footer: format.count(openA(systems)),
          cell: (row) => (row.area === null ? '' : format.count(openA(systems, row.area.areaId))),
        },
      ]}
    />
  );
}
