import { memo } from 'react';
import { classNames } from './class-names.ts';
import styles from './virtual-table.module.css';
import type { VirtualColumn } from './virtual-table.tsx';

export interface VirtualRowProps<Row> {
  readonly index: number;
  /** distance from the top of the rows, px */
  readonly start: number;
  /** undefined while it is on its way */
  readonly row: Row | undefined;
  /** what its checkbox is called */
  readonly tickName: string;
  readonly columns: readonly VirtualColumn<Row>[];
  readonly reachable: boolean;
  /** undefined where rows cannot be ticked */
  readonly selected: boolean | undefined;
  /** the row leads somewhere */
  readonly opens: boolean;
}

/**
 * One row of a VirtualTable. The table listens for all of its rows: so a row is drawn again only when what it shows
 * has changed, and not for every frame that is scrolled.
 */
export const VirtualRow = memo(PlainRow) as typeof PlainRow;

function PlainRow<Row>(props: VirtualRowProps<Row>) {
  return (
    // biome-ignore lint/a11y/useSemanticElements: a table row cannot stand at a distance
    <div
      role="row"
      aria-rowindex={props.index + 2}
      aria-selected={props.selected}
      data-index={props.index}
      data-opens={props.opens ? '' : undefined}
      tabIndex={props.reachable ? 0 : -1}
      className={styles.row}
      style={{ transform: `translateY(${props.start}px)` }}
    >
      <Cells {...props} />
    </div>
  );
}

function Cells<Row>({ row, tickName, columns, selected }: VirtualRowProps<Row>) {
  return (
    // biome-ignore-start lint/a11y/useSemanticElements: see above
    // biome-ignore-start lint/a11y/useFocusableInteractive: the row carries the focus
    <>
      {selected !== undefined && (
        <div role="gridcell" className={classNames(styles.cell, styles.select)}>
          <input
            type="checkbox"
            tabIndex={-1}
            aria-label={tickName}
            checked={selected}
            disabled={row === undefined}
            data-tick=""
            // The click decides, because only it knows whether Shift was held: the table hears it.
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
          data-whole={column.whole ? '' : undefined}
          data-header={column.rowHeader ? '' : undefined}
        >
          {row === undefined ? <span className={styles.pending} aria-hidden="true" /> : column.cell(row)}
        </div>
      ))}
    </>
    // biome-ignore-end lint/a11y/useFocusableInteractive: see above
    // biome-ignore-end lint/a11y/useSemanticElements: see above
  );
}
