import type { ImportPreview } from '@seatwell/contract';
import { useText } from '../../texts/text-provider.tsx';
import { Table } from '../../ui/table.tsx';
import styles from './import.module.css';
import { Paged } from './paged.tsx';
import { useFieldNames } from './use-field-names.ts';
import { useImportRows } from './use-import.ts';
import { useShownValue } from './use-shown-value.ts';
import { useStageName } from './use-stage-name.ts';

/** What differs from the register, field by field, before it is changed. */
export function ChangedRows({ preview }: { preview: ImportPreview }) {
  const text = useText('import');
  const nameOf = useFieldNames();
  const stageOf = useStageName();
  const shown = useShownValue();
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
            {
              key: 'before',
              header: text('before'),
              cell: ({ difference }) => shown(difference.field, difference.before),
            },
            {
              key: 'after',
              header: text('after'),
              cell: ({ difference }) => <strong>{shown(difference.field, difference.after)}</strong>,
            },
          ]}
        />
      )}
    </Paged>
  );
}
