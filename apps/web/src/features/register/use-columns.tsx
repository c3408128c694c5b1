import type { JointRow, RegisterSort } from '@seatwell/contract';
import { useMemo } from 'react';
import { useTrade } from '../../app/use-trade.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { useLanguage, useText } from '../../texts/text-provider.tsx';
import { StageWord } from '../../ui/drawing.tsx';
import { useMediaQuery } from '../../ui/use-media-query.ts';
import type { VirtualColumn } from '../../ui/virtual-table.tsx';
import { Flags } from './flags.tsx';
import type { RegisterSearch } from './register-search.ts';
import { trackOfTags } from './tag-track.ts';

/** The columns of the register; on a smaller screen those go first that the joint page answers as well. */
export function useColumns(
  search: RegisterSearch,
  loaded: readonly (readonly JointRow[])[],
): readonly VirtualColumn<JointRow>[] {
  const text = useText('register');
  const trade = useTrade();
  const format = useFormat();
  const widest = useMediaQuery('(min-width: 96rem)');
  // What a joint waits for takes longer words in other languages than English: there it needs the room of a column.
  const { language } = useLanguage();
  const wide = useMediaQuery(language === 'en' ? '(min-width: 84rem)' : '(min-width: 90rem)');
  const middle = useMediaQuery('(min-width: 68rem)');
  const { sort = 'tag', descending } = search;
  const tagTrack = useMemo(() => trackOfTags(loaded), [loaded]);
  return useMemo(() => {
    const sorted = (each: RegisterSort) =>
      each !== sort ? 'none' : descending === 'true' ? 'descending' : 'ascending';
    const columns: (VirtualColumn<JointRow> & { readonly from?: 'middle' | 'wide' | 'widest' })[] = [
      {
        key: 'tag',
        header: text('column-tag'),
        width: tagTrack,
        whole: true,
        rowHeader: true,
        sorted: sorted('tag'),
        cell: (row) => row.tag,
      },
      {
        key: 'flange',
        header: text('column-flange'),
        width: 'minmax(10.4rem, 0.3fr)',
        sorted: sorted('size'),
        cell: (row) => flangeCell(row, trade),
      },
      {
        key: 'bolts',
        header: text('column-bolts'),
        width: '5rem',
        whole: true,
        from: 'middle',
        cell: (row) => trade.bolts(row.boltCount, row.boltThread),
      },
      {
        key: 'gasket',
        header: text('column-gasket'),
        width: 'minmax(7.1rem, 0.3fr)',
        from: 'widest',
        cell: (row) => trade.word('family', row.gasketFamily),
      },
      {
        key: 'stage',
        header: text('column-stage'),
        width: '8.9rem',
        sorted: sorted('stage'),
        cell: (row) => <StageWord stage={row.stage}>{trade.word('stage', row.stage)}</StageWord>,
      },
      {
        key: 'set',
        header: text('column-set', { unit: format.unit('torque') }),
        width: '4.25rem',
        numeric: true,
        whole: true,
        cell: (row) => format.value('torque', row.torque_Nm),
      },
      {
        key: 'crew',
        header: text('column-crew'),
        width: '4rem',
        from: 'middle',
        sorted: sorted('crew'),
        cell: (row) => row.crew?.code,
      },
      {
        key: 'planned',
        header: text('column-planned'),
        width: '5.25rem',
        sorted: sorted('planned'),
        cell: (row) => (row.plannedOn === null ? '' : format.shortDay(row.plannedOn)),
      },
      {
        key: 'pack',
        header: text('column-pack'),
        width: 'minmax(6.5rem, 0.3fr)',
        from: 'wide',
        cell: (row) => row.packs.map((pack) => pack.number).join(', '),
      },
      {
        key: 'waits',
        header: text('column-waits'),
        width: 'minmax(8.4rem, 1.6fr)',
        cell: (row) =>
          row.flags.some((flag) => flag !== 'part-tight') ? (
            <Flags flags={row.flags} />
          ) : (
            row.waitsFor.code !== 'nothing' && trade.waitsFor(row.waitsFor)
          ),
      },
    ];
    const room = { middle, wide, widest };
    return columns.filter(({ from }) => from === undefined || room[from]);
  }, [text, trade, format, widest, wide, middle, sort, descending, tagTrack]);
}

function flangeCell(row: JointRow, trade: ReturnType<typeof useTrade>): string {
  const plain = row.kind === 'flange-pair' || row.kind === 'ring-joint';
  const flange = trade.flange(row.size, row.rating);
  return plain ? flange : [flange, trade.word('kindShort', row.kind)].filter(Boolean).join(', ');
}
