import type { ImportPreview } from '@seatwell/contract';
import { useText } from '../../texts/text-provider.tsx';
import { Table } from '../../ui/table.tsx';
import { useFieldNames } from './field-names.ts';
import styles from './import.module.css';
import { Paged } from './paged.tsx';
import { useStageName } from './stage-name.ts';
import { useImportRows } from './use-import.ts';

/** What differs from the register, field by field, before it is changed. */
export function ChangedRows({ preview }: { preview: ImportPreview }) {
  const text = useText('import');
  const nameOf = useFieldNames();
  const stageOf = useStageName();
  return (
    <Paged query={useImportRows(preview, 'changed')}>
      {(rows) => (
        <Table
          caption={text('tab-changed')}
          captionHidden
          rows={rows.flatMap((row) => row.differences.map((difference) => ({ row, difference })))}
          rowKey={({ row, difference }) => `${row.rowNumber} ${difference.field}`}
          empty={text('no-changes')}
          onPhone="cards"
          columns={[
            { key: 'tag', header: text('field-tag'), rowHeader: true, cell: ({ row }) => row.tag },
            {
              key: 'stage',
              header: text('stage'),
              cell: ({ row }) => (
                <span className={row.stage === 'planned' ? undefined : styles.worked}>{stageOf(row.stage)}</span>
              ),
            },
            { key: 'field', header: text('field'), cell: ({ difference }) => nameOf(difference.field) },
            { key: 'before', header: text('before'), cell: ({ difference }) => difference.before ?? text('nothing') },
            {
              key: 'after',
              header: text('after'),
              cell: ({ difference }) => <strong>{difference.after ?? text('nothing')}</strong>,
            },
          ]}
        />
      )}
    </Paged>
  );
}
