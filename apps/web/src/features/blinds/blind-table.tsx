import type { BlindsAnswer } from '@seatwell/contract';
import { useState } from 'react';
import { addresses } from '../../app/addresses.ts';
import { sharedReason } from '../../app/shared-reason.ts';
import { useReasonAgainst } from '../../app/use-reason-against.ts';
import { useTrade } from '../../app/use-trade.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { Button } from '../../ui/button.tsx';
import { Link } from '../../ui/link.tsx';
import { Table } from '../../ui/table.tsx';
import { BlindDialog, type BlindStep } from './blind-dialog.tsx';
import styles from './blinds.module.css';

export type BlindRow = BlindsAnswer['rows'][number];

/** What can be recorded next on a blind. */
export function nextSteps(row: Pick<BlindRow, 'type' | 'state'>): readonly BlindStep[] {
  if (row.type === 'spectacle') return ['spectacle-turned'];
  if (row.state === 'planned') return ['blind-in'];
  return row.state === 'in' ? ['blind-out'] : [];
}

/** Blinds one by one: where, why, whose, in and out. */
export function BlindTable({ shutdownId, rows }: { shutdownId: string; rows: readonly BlindRow[] }) {
  const reasonAgainst = useReasonAgainst();
  const text = useText('blinds');
  const trade = useTrade();
  const format = useFormat();
  const against = sharedReason(reasonAgainst, rows, 'blind-in', 'blind-out', 'spectacle-turned');
  const [step, setStep] = useState<{ row: BlindRow; step: BlindStep } | null>(null);
  return (
    <>
      {against !== undefined && <p className={styles.soft}>{against}</p>}
      <Table
        caption={text('blinds')}
        captionHidden
        rows={rows}
        rowKey={(row) => row.blindId}
        empty={text('none')}
        columns={[
          { key: 'number', header: text('number'), rowHeader: true, cell: (row) => row.number },
          {
            key: 'type',
            header: text('type'),
            cell: (row) =>
              [
                trade.word('blind', row.type),
                row.plan.rating,
                row.plan.thickness_mm && format.quantity('length', row.plan.thickness_mm),
              ]
                .filter(Boolean)
                .join(', '),
          },
          { key: 'purpose', header: text('purpose'), cell: (row) => text(`purpose-${row.purpose}`) },
          { key: 'where', header: text('where'), cell: (row) => <Where shutdownId={shutdownId} row={row} /> },
          { key: 'owner', header: text('owner'), cell: (row) => row.plan.owner },
          {
            key: 'by',
            header: text('out-by'),
            cell: (row) =>
              row.outBy !== null && (
                <span className={row.overdue ? styles.late : undefined}>{format.calendarDay(row.outBy)}</span>
              ),
          },
          { key: 'state', header: text('state'), cell: (row) => <BlindState row={row} /> },
          ...(against === undefined
            ? [
                {
                  key: 'next',
                  header: text('record'),
                  cell: (row: BlindRow) =>
                    nextSteps(row).map((each) => (
                      <Button
                        key={each}
                        kind="quiet"
                        label={text(`do-${each}-of`, { number: row.number })}
                        disabledReason={reasonAgainst(row.actions, each)}
                        onClick={() => setStep({ row, step: each })}
                      >
                        {text(`do-${each}`)}
                      </Button>
                    )),
                },
              ]
            : []),
        ]}
      />
      {step && <BlindDialog {...step} onClose={() => setStep(null)} />}
    </>
  );
}

function Where({ shutdownId, row }: { shutdownId: string; row: BlindRow }) {
  return (
    <>
      {row.joint && <Link href={addresses.joint(shutdownId, row.joint.jointId)}>{row.joint.tag}</Link>}
      {row.joint && row.pack && ' · '}
      {row.pack && <Link href={addresses.pack(shutdownId, row.pack.packId)}>{row.pack.number}</Link>}
      {row.area && ` ${row.area.code}`}
    </>
  );
}

function BlindState({ row }: { row: BlindRow }) {
  const text = useText('blinds');
  const format = useFormat();
  if (row.type === 'spectacle')
    return row.position === 'closed' || row.position === 'open'
      ? text(`position-${row.position}`)
      : text('state-planned');
  if (row.outAt !== null) return text('out-at', { at: format.dayTime(row.outAt) });
  return row.inAt === null ? text('state-planned') : text('in-at', { at: format.dayTime(row.inAt) });
}
