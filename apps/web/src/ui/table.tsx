import type { ReactNode } from 'react';
import { classNames } from './class-names.ts';
import styles from './table.module.css';
import { VisuallyHidden } from './visually-hidden.tsx';

export interface TableColumn<Row> {
  readonly key: string;
  readonly header: string;
  readonly cell: (row: Row) => ReactNode;
  /** numbers line up at their end */
  readonly numeric?: boolean;
  /** the cell that names the row */
  readonly rowHeader?: boolean;
  readonly footer?: ReactNode;
}

export interface TableProps<Row> {
  readonly caption: string;
  readonly captionHidden?: boolean;
  readonly columns: readonly TableColumn<Row>[];
  readonly rows: readonly Row[];
  readonly rowKey: (row: Row) => string;
  /** shown in place of rows when there are none */
  readonly empty?: string;
}

/** A dense table of up to some hundred rows; VirtualTable takes more. */
export function Table<Row>({ caption, captionHidden, columns, rows, rowKey, empty }: TableProps<Row>) {
  const hasFooter = columns.some((column) => column.footer !== undefined);
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard
    <section className={styles.scroll} tabIndex={0} aria-label={caption}>
      <table className={styles.table}>
        <caption className={captionHidden ? undefined : styles.caption}>
          {captionHidden ? <VisuallyHidden>{caption}</VisuallyHidden> : caption}
        </caption>
        <thead>
          <tr>
            {columns.map((column) => (
              <th key={column.key} scope="col" className={classNames(column.numeric && styles.number)}>
                {column.header}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={rowKey(row)}>
              {columns.map((column) =>
                column.rowHeader ? (
                  <th key={column.key} scope="row">
                    {column.cell(row)}
                  </th>
                ) : (
                  <td key={column.key} className={classNames(column.numeric && styles.number)}>
                    {column.cell(row)}
                  </td>
                ),
              )}
            </tr>
          ))}
          {rows.length === 0 && empty !== undefined && (
            <tr>
              <td colSpan={columns.length}>{empty}</td>
            </tr>
          )}
        </tbody>
        {hasFooter && (
          <tfoot>
            <tr>
              {columns.map((column) => (
                <td key={column.key} className={classNames(column.numeric && styles.number)}>
                  {column.footer}
                </td>
              ))}
            </tr>
          </tfoot>
        )}
      </table>
    </section>
  );
}
