import type { ImportPreview, ImportRow } from '@seatwell/contract';
import { useText } from '../../texts/text-provider.tsx';
import { Table } from '../../ui/table.tsx';
import styles from './import.module.css';
import { Paged } from './paged.tsx';
import { useFieldNames } from './use-field-names.ts';
import { useImportRows } from './use-import.ts';
import { useShownValue } from './use-shown-value.ts';

const SHOWN = [
  'area',
  'system',
  'kind',
  'standard',
  'size',
  'rating',
  'boltCount',
  'boltThread',
  'gasketFamily',
  'criticality',
];

/** Rows as they would be read; what was filled in is marked. */
export function NewRows({ preview, kind }: { preview: ImportPreview; kind: 'new' | 'same' }) {
  const text = useText('import');
  const nameOf = useFieldNames();
  const shown = useShownValue();
  const value = (row: ImportRow, field: string) => {
    const read = shown(field, row.values[field]);
    return row.filled.includes(field) ? (
      <span className={styles.filled} title={text('filled')}>
        {read}
      </span>
    ) : (
      read
    );
  };
  return (
    <Paged query={useImportRows(preview, kind)}>
      {(rows) => (
        <>
          {rows.some((row) => row.filled.length > 0) && (
            <p className={styles.soft}>
              <span className={styles.filled}>{text('filled-sign')}</span> {text('filled')}
            </p>
          )}
          <Table
            caption={text(kind === 'new' ? 'tab-new' : 'tab-same')}
            captionHidden
            rows={rows}
            rowKey={(row) => String(row.rowNumber)}
            empty={text('no-rows')}
            onPhone="cards"
            columns={[
              { key: 'tag', header: text('field-tag'), rowHeader: true, cell: (row) => row.tag },
              ...SHOWN.map((field) => ({
                key: field,
                header: nameOf(field),
                cell: (row: ImportRow) => value(row, field),
              })),
            ]}
          />
        </>
      )}
    </Paged>
  );
}
