import type { ImportPreview } from '@seatwell/contract';
import { useText } from '../../texts/text-provider.tsx';
import { Table } from '../../ui/table.tsx';
import styles from './import.module.css';
import { Paged } from './paged.tsx';
import { useFieldNames } from './use-field-names.ts';
import { useImportProblems } from './use-import.ts';
import { useImportSaid } from './use-import-said.ts';

/** Every cell that is wrong or deserves a look: where it stands, what it holds, what to do. */
export function ProblemRows({ preview }: { preview: ImportPreview }) {
  const text = useText('import');
  const said = useImportSaid();
  const nameOf = useFieldNames();
  return (
    <Paged query={useImportProblems(preview)}>
      {(rows) => (
        <Table
          caption={text('tab-problems')}
          captionHidden
          rows={rows.map((row, index) => ({ ...row, index }))}
          rowKey={(row) => String(row.index)}
          empty={text('no-problems')}
          onPhone="cards"
          columns={[
            {
              key: 'cell',
              header: text('cell'),
              rowHeader: true,
              cell: (row) =>
                row.column === ''
                  ? text('in-row', { row: row.rowNumber })
                  : text('at-cell', { column: row.column, row: row.rowNumber }),
            },
            { key: 'field', header: text('field'), cell: (row) => nameOf(row.field) },
            { key: 'value', header: text('value'), cell: (row) => row.value || text('empty-cell') },
            {
              key: 'severity',
              header: text('severity'),
              cell: (row) => (
                <span className={row.severity === 'error' ? styles.error : undefined}>
                  {text(row.severity === 'error' ? 'severity-error' : 'severity-shown')}
                </span>
              ),
            },
            { key: 'message', header: text('reason'), cell: (row) => said(row, row.field) },
          ]}
        />
      )}
    </Paged>
  );
}
