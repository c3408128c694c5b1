import { memo, useMemo } from 'react';
import { useText } from '../texts/text-provider.tsx';
import { classNames } from './class-names.ts';
import styles from './virtual-table.module.css';
import type { VirtualColumn } from './virtual-table.tsx';
import { VisuallyHidden } from './visually-hidden.tsx';

export interface VirtualHeadProps<Row> {
  readonly columns: readonly VirtualColumn<Row>[];
  readonly rows: readonly (Row | undefined)[];
  readonly rowKey: (row: Row) => string;
  readonly selected: ReadonlySet<string> | undefined;
  readonly onSelectedChange: ((selected: ReadonlySet<string>) => void) | undefined;
  readonly onSort: ((columnKey: string) => void) | undefined;
}

const arrows = { ascending: '▲', descending: '▼', none: '' };

/** The head row of a VirtualTable: names, sorting, and the box that ticks all loaded rows. */
export const VirtualHead = memo(PlainHead) as typeof PlainHead;

function PlainHead<Row>(props: VirtualHeadProps<Row>) {
  const { columns, rows, rowKey, selected, onSelectedChange, onSort } = props;
  const text = useText('ui');
  const loaded = useMemo(() => rows.flatMap((row) => (row === undefined ? [] : [rowKey(row)])), [rows, rowKey]);
  const ticked = selected === undefined ? 0 : loaded.filter((key) => selected.has(key)).length;
  const all = loaded.length > 0 && ticked === loaded.length;
  return (
    // biome-ignore-start lint/a11y/useFocusableInteractive: the cells hold what can be focused
    // biome-ignore-start lint/a11y/useSemanticElements: a table element cannot hold rows that stand at a distance
    <div role="rowgroup">
      <div role="row" aria-rowindex={1} className={styles.head}>
        {selected && (
          <div role="columnheader" className={classNames(styles.cell, styles.select)}>
            <input
              type="checkbox"
              aria-label={text('select-all')}
              checked={all}
              ref={(box) => {
                if (box) box.indeterminate = ticked > 0 && !all;
              }}
              onChange={() => onSelectedChange?.(new Set(all ? [] : loaded))}
            />
          </div>
        )}
        {columns.map((column) => (
          <div
            key={column.key}
            role="columnheader"
            aria-sort={column.sorted}
            className={styles.cell}
            data-numeric={column.numeric ? '' : undefined}
          >
            {column.sorted === undefined || !onSort ? (
              column.header
            ) : (
              <button type="button" className={styles.sort} onClick={() => onSort(column.key)}>
                {column.header}
                <span aria-hidden="true">{arrows[column.sorted]}</span>
                {column.sorted !== 'none' && <VisuallyHidden>{text(`sort-${column.sorted}`)}</VisuallyHidden>}
              </button>
            )}
          </div>
        ))}
      </div>
    </div>
    // biome-ignore-end lint/a11y/useSemanticElements: see above
    // biome-ignore-end lint/a11y/useFocusableInteractive: see above
  );
}
