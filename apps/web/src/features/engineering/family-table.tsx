import type { RefusalItem, TargetTableRow } from '@seatwell/calc';
import { useSaid } from '../../app/use-said.ts';
import { useTrade } from '../../app/use-trade.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { Notice } from '../../ui/notice.tsx';
import { Table } from '../../ui/table.tsx';
import { useLimitName } from '../joint/use-limit-name.ts';

interface Props {
  readonly rows: readonly TargetTableRow[] | { readonly refused: readonly RefusalItem[] };
  readonly shortfall: string;
}

/** Every size of the family with its target, or the reason why it is not covered. */
export function FamilyTable({ rows, shortfall }: Props) {
  const text = useText('engineering');
  const said = useSaid('calculation');
  const trade = useTrade();
  const format = useFormat();
  const limitName = useLimitName();
  if ('refused' in rows) {
    return (
      <Notice kind="attention" title={text('preview-not-possible')}>
        <p>{rows.refused.map((each) => said(each)).join(' ')}</p>
      </Notice>
    );
  }
  const computed = (row: TargetTableRow) => ('refused' in row ? undefined : row);
  return (
    <Table
      caption={text('preview')}
      rows={rows}
      rowKey={(row) => `${row.size} ${row.rating}`}
      onPhone="table"
      columns={[
        { key: 'flange', header: text('flange'), rowHeader: true, cell: (row) => trade.flange(row.size, row.rating) },
        {
          key: 'bolts',
          header: text('bolts'),
          cell: (row) => trade.bolts(computed(row)?.boltCount ?? null, computed(row)?.boltThread ?? null),
        },
        {
          key: 'stress',
          header: text('stress-in', { what: text('bolt-stress'), unit: format.unit('stress') }),
          numeric: true,
          cell: (row) => format.value('stress', computed(row)?.boltStress_MPa),
        },
        {
          key: 'torque',
          header: text('torque-in', { unit: format.unit('torque') }),
          numeric: true,
          cell: (row) => format.value('torque', computed(row)?.passes.at(-1)?.torque_Nm),
        },
        {
          key: 'state',
          header: text('state'),
          cell: (row) => {
            if ('refused' in row) return row.refused;
            if (row.windowOpen) return text('governed-by', { limit: limitName(row.governedBy) });
            return shortfall === '' ? text('left-out') : text('with-reason');
          },
        },
      ]}
    />
  );
}
