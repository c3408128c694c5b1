import type { CalcTargetResponse } from '@seatwell/contract';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { Table } from '../../ui/table.tsx';
import { useLimitName } from './use-limit-name.ts';

/** The window's limits as rows, each with its source. */
export function WindowTable({ answer }: { answer: CalcTargetResponse }) {
  const text = useText('joint');
  const format = useFormat();
  const limitName = useLimitName();
  const rows = [
    ...answer.window.lower.map((limit) => ({ ...limit, side: text('at-least') })),
    ...answer.window.upper.map((limit) => ({ ...limit, side: text('at-most') })),
  ];
  return (
    <Table
      caption={text('window')}
      captionHidden
      rows={rows}
      rowKey={(row) => `${row.side} ${row.name}`}
      columns={[
        { key: 'name', header: text('limit'), rowHeader: true, cell: (row) => limitName(row.name) },
        { key: 'side', header: text('side'), cell: (row) => row.side },
        {
          key: 'stress',
          header: text('bolt-stress-in', { unit: format.unit('stress') }),
          numeric: true,
          cell: (row) => format.value('stress', row.boltStress_MPa),
        },
        {
          key: 'source',
          header: text('source'),
          cell: (row) => (row.advisory ? text('advisory', { source: row.source }) : row.source),
        },
      ]}
    />
  );
}
