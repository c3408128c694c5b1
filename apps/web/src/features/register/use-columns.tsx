import type { JointRow } from '@seatwell/contract';
import { useMemo } from 'react';
import { useTrade } from '../../app/use-trade.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { StageWord } from '../../ui/drawing.tsx';
import { useMediaQuery } from '../../ui/use-media-query.ts';
import type { VirtualColumn } from '../../ui/virtual-table.tsx';
import { Flags } from './flags.tsx';
import type { RegisterSearch } from './register-search.ts';
import type { RegisterSort } from './register-sorts.ts';

/** The columns of the register; on a smaller screen those go first that the joint page answers as well. */
export function useColumns(search: RegisterSearch): readonly VirtualColumn<JointRow>[] {
  const text = useText('register');
  const trade = useTrade();
  const format = useFormat();
  const wide = useMediaQuery('(min-width: 84rem)');
  const middle = useMediaQuery('(min-width: 68rem)');
  const { sort = 'tag', descending } = search;
  return useMemo(() => {
    const sorted = (each: RegisterSort) =>
      each !== sort ? 'none' : descending === 'true' ? 'descending' : 'ascending';
    const columns: (VirtualColumn<JointRow> & { readonly from?: 'middle' | 'wide' })[] = [
      {
        key: 'tag',
        header: text('column-tag'),
        width: 'minmax(7rem, 1fr)',
        rowHeader: true,
        sorted: sorted('tag'),
        cell: (row) => row.tag,
      },
      {
        key: 'flange',
        header: text('column-flange'),
        width: 'minmax(7rem, 1fr)',
        sorted: sorted('size'),
        cell: (row) => flangeCell(row, trade),
      },
      {
        key: 'bolts',
        header: text('column-bolts'),
        width: '5.25rem',
        from: 'middle',
        cell: (row) => trade.bolts(row.boltCount, row.boltThread),
      },
      {
        key: 'gasket',
        header: text('column-gasket'),
        width: 'minmax(7.25rem, 0.7fr)',
        from: 'wide',
        cell: (row) => trade.word('family', row.gasketFamily),
      },
      {
        key: 'stage',
        header: text('column-stage'),
        width: 'minmax(9rem, 0.9fr)',
        sorted: sorted('stage'),
        cell: (row) => <StageWord stage={row.stage}>{trade.word('stage', row.stage)}</StageWord>,
      },
      {
        key: 'set',
        header: text('column-set', { unit: format.unit('torque') }),
        width: '4.75rem',
        numeric: true,
        cell: (row) => format.value('torque', row.torque_Nm),
      },
      {
        key: 'crew',
        header: text('column-crew'),
        width: '3.75rem',
        from: 'middle',
        sorted: sorted('crew'),
        cell: (row) => row.crew?.code,
      },
      {
        key: 'planned',
        header: text('column-planned'),
        width: '6.75rem',
        sorted: sorted('planned'),
        cell: (row) => (row.plannedOn === null ? '' : format.calendarDay(row.plannedOn)),
      },
      {
        key: 'pack',
        header: text('column-pack'),
        width: 'minmax(5.5rem, 0.5fr)',
        from: 'wide',
        cell: (row) => row.packs.map((pack) => pack.number).join(', '),
      },
      {
        key: 'waits',
        header: text('column-waits'),
        width: 'minmax(8rem, 1.4fr)',
        cell: (row) =>
          row.flags.some((flag) => flag !== 'part-tight') ? (
            <Flags flags={row.flags} />
          ) : (
            row.waitsFor.code !== 'nothing' && trade.waitsFor(row.waitsFor)
          ),
      },
    ];
    return columns.filter(({ from }) => from === undefined || (from === 'middle' ? middle : wide));
  }, [text, trade, format, wide, middle, sort, descending]);
}

function flangeCell(row: JointRow, trade: ReturnType<typeof useTrade>): string {
  const plain = row.kind === 'flange-pair' || row.kind === 'ring-joint';
  const flange = trade.flange(row.size, row.rating);
  return plain ? flange : [flange, trade.word('kind', row.kind)].filter(Boolean).join(', ');
}
