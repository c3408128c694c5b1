import type { KeyboardEvent, MouseEvent } from 'react';
import { useText } from '../texts/text-provider.tsx';
import { classNames } from './class-names.ts';
import styles from './virtual-table.module.css';
import type { VirtualColumn } from './virtual-table.tsx';

export interface VirtualRowProps<Row> {
  readonly index: number;
  /** distance from the top of the rows, px */
  readonly start: number;
  /** undefined while it is on its way */
  readonly row: Row | undefined;
  readonly name: string;
  readonly columns: readonly VirtualColumn<Row>[];
  readonly reachable: boolean;
  /** undefined where rows cannot be ticked */
  readonly selected: boolean | undefined;
  readonly onTick: (range: boolean) => void;
  readonly onOpen: (() => void) | undefined;
  readonly onFocus: () => void;
  readonly onKeyDown: (event: KeyboardEvent) => void;
}

/** One row of a VirtualTable. */
export function VirtualRow<Row>(props: VirtualRowProps<Row>) {
  const open = (event: MouseEvent) => {
    // Links and boxes inside the row keep their own meaning.
    if (!(event.target as Element).closest('a, button, input, label')) props.onOpen?.();
  };
  return (
    // biome-ignore lint/a11y/useSemanticElements: a table row cannot stand at a distance
    <div
      role="row"
      aria-rowindex={props.index + 2}
      aria-selected={props.selected}
      data-index={props.index}
      tabIndex={props.reachable ? 0 : -1}
      className={styles.row}
      style={{ transform: `translateY(${props.start}px)`, cursor: props.onOpen ? 'pointer' : undefined }}
      onClick={open}
      onFocus={props.onFocus}
      onKeyDown={props.onKeyDown}
    >
      <Cells {...props} />
    </div>
  );
}

function Cells<Row>({ row, name, columns, selected, onTick }: VirtualRowProps<Row>) {
  const text = useText('ui');
  return (
    // biome-ignore-start lint/a11y/useSemanticElements: see above
    // biome-ignore-start lint/a11y/useFocusableInteractive: the row carries the focus
    <>
      {selected !== undefined && (
        <div role="gridcell" className={classNames(styles.cell, styles.select)}>
          <input
            type="checkbox"
            tabIndex={-1}
            aria-label={text('select-row', { name })}
            checked={selected}
            disabled={row === undefined}
            onClick={(event) => onTick(event.shiftKey)}
            // The click decides, because only it knows whether Shift was held.
            onChange={() => undefined}
          />
        </div>
      )}
      {columns.map((column) => (
        <div
          key={column.key}
          role={column.rowHeader ? 'rowheader' : 'gridcell'}
          className={styles.cell}
          data-numeric={column.numeric ? '' : undefined}
          data-header={column.rowHeader ? '' : undefined}
        >
          {row === undefined ? (
            <span className={styles.pending} aria-hidden="true" />
          ) : (
            <span className={styles.words}>{column.cell(row)}</span>
          )}
        </div>
      ))}
    </>
    // biome-ignore-end lint/a11y/useFocusableInteractive: see above
    // biome-ignore-end lint/a11y/useSemanticElements: see above
  );
}
