import type { PartTightRow } from '@seatwell/contract';
import { addresses } from '../../app/addresses.ts';
import { useTrade } from '../../app/use-trade.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { StageGlyph } from '../../ui/drawing.tsx';
import { Link } from '../../ui/link.tsx';
import { Table } from '../../ui/table.tsx';
import { useRestartWords } from './restart-words.ts';
import styles from './today.module.css';

/** Flanges that carry load on some bolts only: the most dangerous state, first on the first screen. */
export function PartTight({ shutdownId, rows }: { shutdownId: string; rows: readonly PartTightRow[] }) {
  const text = useText('today');
  const trade = useTrade();
  const words = useRestartWords();
  return (
    <div className={styles.partTight}>
      <Table
        caption={text('part-tight-now')}
        rows={rows}
        rowKey={(row) => row.makeId}
        columns={[
          { key: 'sign', header: '', cell: () => <StageGlyph stage="part-tight" /> },
          {
            key: 'joint',
            header: text('joint'),
            rowHeader: true,
            cell: (row) => <Link href={addresses.joint(shutdownId, row.jointId)}>{row.tag}</Link>,
          },
          {
            key: 'flange',
            header: text('flange'),
            cell: (row) => flangeOf(row, trade, text('bolts-of', { count: row.boltCount ?? 0 })),
          },
          { key: 'left', header: text('left-at'), cell: (row) => <LeftAt row={row} /> },
          { key: 'by', header: text('left-by'), cell: (row) => <span className={styles.by}>{words.by(row)}</span> },
          {
            key: 'restart',
            header: text('restart'),
            cell: (row) => (row.restart === null ? '' : words.restart(row.restart)),
          },
        ]}
      />
    </div>
  );
}

function LeftAt({ row }: { row: PartTightRow }) {
  const format = useFormat();
  const words = useRestartWords();
  return (
    <>
      {words.leftAt(row)}
      {row.leftAt !== null && (
        <>
          {' · '}
          <span className={styles.nowrap}>
            {row.interruptedLastShift ? format.dayTime(row.leftAt) : format.time(row.leftAt)}
          </span>
        </>
      )}
      {row.why !== null && <span className={styles.why}>{row.why}</span>}
    </>
  );
}

function flangeOf(row: PartTightRow, trade: ReturnType<typeof useTrade>, bolts: string): string {
  const plain = row.kind === 'flange-pair' || row.kind === 'ring-joint';
  return [
    trade.flange(row.size, row.rating),
    row.boltCount === null ? '' : bolts,
    plain ? '' : trade.word('kind', row.kind),
  ]
    .filter(Boolean)
    .join(' · ');
}
