import type { JointRow } from '@seatwell/contract';
import { useSuspenseQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { addresses } from '../../app/addresses.ts';
import { useMay } from '../../app/session.ts';
import { useShutdownId } from '../../app/use-shutdown.ts';
import { useTrade } from '../../app/use-trade.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { Button } from '../../ui/button.tsx';
import { StageWord } from '../../ui/drawing.tsx';
import { Link } from '../../ui/link.tsx';
import { PageHeader } from '../../ui/page-header.tsx';
import { Table } from '../../ui/table.tsx';
import { foundJointsQuery } from './found-joints-query.ts';
import { MergeDialog } from './merge-dialog.tsx';

/** Found joints, to be merged into the joint of the register that they are, or kept. */
export function FoundJointsPage() {
  const text = useText('reviews');
  const trade = useTrade();
  const format = useFormat();
  const shutdownId = useShutdownId();
  const may = useMay();
  const { data } = useSuspenseQuery(foundJointsQuery(shutdownId));
  const [merging, setMerging] = useState<JointRow | null>(null);
  return (
    <>
      <PageHeader
        over={<Link href={addresses.register(shutdownId)}>{text('register')}</Link>}
        title={text('found-title', { count: data.rows.length, shown: format.count(data.rows.length) })}
        documentTitle={text('found')}
        sub={text('found-sub')}
      />
      {!may('void-joint') && <p>{text('merge-who')}</p>}
      <Table
        caption={text('found')}
        captionHidden
        rows={data.rows}
        rowKey={(row) => row.jointId}
        empty={text('found-none')}
        columns={[
          {
            key: 'tag',
            header: text('temporary-number'),
            rowHeader: true,
            cell: (row) => <Link href={addresses.joint(shutdownId, row.jointId)}>{row.tag}</Link>,
          },
          { key: 'flange', header: text('flange'), cell: (row) => trade.flange(row.size, row.rating) },
          { key: 'near', header: text('near'), cell: (row) => row.item ?? row.location },
          { key: 'area', header: text('area'), cell: (row) => row.area?.name },
          {
            key: 'stage',
            header: text('stage'),
            cell: (row) => <StageWord stage={row.stage}>{trade.word('stage', row.stage)}</StageWord>,
          },
          {
            key: 'merge',
            header: text('action'),
            cell: (row) =>
              may('void-joint') && (
                <Button kind="quiet" label={text('merge-of', { tag: row.tag })} onClick={() => setMerging(row)}>
                  {text('merge')}
                </Button>
              ),
          },
        ]}
      />
      {merging && <MergeDialog joint={merging} onClose={() => setMerging(null)} />}
    </>
  );
}
