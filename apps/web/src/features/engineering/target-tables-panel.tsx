import type { TargetTablesAnswer } from '@seatwell/contract';
import { useState } from 'react';
import { reasonAgainst } from '../../app/sign.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { Button } from '../../ui/button.tsx';
import { Table } from '../../ui/table.tsx';
import styles from './engineering.module.css';
import { TargetTableForm } from './target-table-form.tsx';

/** Tables that were approved once for a family of joints. */
export function TargetTablesPanel({ answer }: { answer: TargetTablesAnswer }) {
  const text = useText('engineering');
  const format = useFormat();
  const [making, setMaking] = useState(false);
  const against = reasonAgainst(answer.actions, 'target-table-approved');
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
          { key: 'name', header: text('name'), rowHeader: true, cell: (row) => row.name },
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
