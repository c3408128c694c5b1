import type { PunchRow } from '@seatwell/contract';
import { useState } from 'react';
import { addresses } from '../../app/addresses.ts';
import { sharedReason } from '../../app/shared-reason.ts';
import { useReasonAgainst } from '../../app/use-reason-against.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { Button } from '../../ui/button.tsx';
import { Link } from '../../ui/link.tsx';
import { Table } from '../../ui/table.tsx';
import { ClosePunchDialog } from './close-punch-dialog.tsx';
import styles from './punch.module.css';

interface Props {
  readonly shutdownId: string;
  readonly caption: string;
  readonly captionHidden?: boolean;
  readonly rows: readonly PunchRow[];
  readonly empty: string;
}

/** Punch items with what they are about, who owns them, and the way to close them. */
export function PunchTable({ shutdownId, caption, captionHidden = false, rows, empty }: Props) {
  const reasonAgainst = useReasonAgainst();
  const text = useText('punch');
  const format = useFormat();
  const open = rows.filter((row) => row.closedAt === null);
  const against = sharedReason(reasonAgainst, open, 'punch-closed');
  const [closing, setClosing] = useState<PunchRow | null>(null);
  return (
    <>
      {against !== undefined && <p className={styles.soft}>{against}</p>}
      <Table
        caption={caption}
        captionHidden={captionHidden}
        rows={rows}
        rowKey={(row) => row.punchId}
        empty={empty}
        columns={[
          {
            key: 'category',
            header: text('category'),
            rowHeader: true,
            cell: (row) => (
              <span className={row.category === 'A' && row.closedAt === null ? styles.loud : undefined}>
                {row.category}
              </span>
            ),
          },
          { key: 'text', header: text('item'), cell: (row) => row.text },
          {
            key: 'on',
            header: text('on'),
            cell: (row) => <About shutdownId={shutdownId} row={row} />,
          },
          { key: 'owner', header: text('owner'), cell: (row) => row.owner },
          {
            key: 'raised',
            header: text('raised'),
            cell: (row) =>
              [format.dayTime(row.raisedAt), row.raisedBy === null ? '' : (row.raisedBy.name ?? text('name-erased'))]
                .filter(Boolean)
                .join(', '),
          },
          {
            key: 'closed',
            header: text('closed'),
            cell: (row) =>
              row.closedAt === null
                ? against === undefined && (
                    <Button
                      kind="quiet"
                      label={text('close-item', { item: row.text })}
                      disabledReason={reasonAgainst(row.actions, 'punch-closed')}
                      onClick={() => setClosing(row)}
                    >
                      {text('close')}
                    </Button>
                  )
                : [format.dayTime(row.closedAt), row.closedHow].filter(Boolean).join(': '),
          },
        ]}
      />
      {closing && <ClosePunchDialog item={closing} onClose={() => setClosing(null)} />}
    </>
  );
}

function About({ shutdownId, row }: { shutdownId: string; row: PunchRow }) {
  if (row.joint) return <Link href={addresses.joint(shutdownId, row.joint.jointId)}>{row.joint.tag}</Link>;
  if (row.pack) return <Link href={addresses.pack(shutdownId, row.pack.packId)}>{row.pack.number}</Link>;
  return row.system?.code ?? '';
}
