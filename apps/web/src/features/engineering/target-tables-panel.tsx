import type { TargetTablesAnswer } from '@seatwell/contract';
import { useState } from 'react';
import { addresses } from '../../app/addresses.ts';
import { useReasonAgainst } from '../../app/use-reason-against.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { Button } from '../../ui/button.tsx';
import { Link } from '../../ui/link.tsx';
import { Table } from '../../ui/table.tsx';
import styles from './engineering.module.css';
import { TargetTableForm } from './target-table-form.tsx';
import { TargetTableSheet } from './target-table-sheet.tsx';

/** Tables that were approved once for a family of joints. */
export function TargetTablesPanel({ answer, tableId }: { answer: TargetTablesAnswer; tableId: string | undefined }) {
  const reasonAgainst = useReasonAgainst();
  const text = useText('engineering');
  const format = useFormat();
  const [making, setMaking] = useState(false);
  const against = reasonAgainst(answer.actions, 'target-table-approved');
  const shown = answer.rows.find((row) => row.tableId === tableId);
  if (shown) return <TargetTableSheet table={shown} />;
  return (
    <div className={styles.form}>
      {making ? (
        <TargetTableForm onDone={() => setMaking(false)} />
      ) : (
        <span>
          <Button kind="primary" disabledReason={against} onClick={() => setMaking(true)}>
            {text('make-table')}
          </Button>
        </span>
      )}
      <Table
        caption={text('target-tables')}
        captionHidden
        rows={answer.rows}
        rowKey={(row) => row.tableId}
        empty={text('no-table')}
        columns={[
          {
            key: 'name',
            header: text('name'),
            rowHeader: true,
            cell: (row) => <Link href={addresses.data({ part: 'tables', table: row.tableId })}>{row.name}</Link>,
          },
          { key: 'grade', header: text('grade'), cell: (row) => row.content.boltGrade },
          { key: 'rows', header: text('rows'), numeric: true, cell: (row) => format.count(row.content.rows.length) },
          {
            key: 'approved',
            header: text('state'),
            cell: (row) => text('approved-by', { who: row.approvedBy?.name ?? '', at: format.day(row.approvedAt) }),
          },
        ]}
      />
    </div>
  );
}
