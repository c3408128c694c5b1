import { type ReactNode, useState } from 'react';
import { useText } from '../texts/text-provider.tsx';
import { Button } from './button.tsx';
import { classNames } from './class-names.ts';
import { KeyValues } from './key-values.tsx';
import styles from './table.module.css';
import { phoneQuery, useMediaQuery } from './use-media-query.ts';
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
  /** on a phone, rows with more than three columns of words become cards unless said otherwise */
  readonly onPhone?: 'cards' | 'table';
}

/** A dense table of up to some hundred rows; VirtualTable takes more. */
export function Table<Row>(props: TableProps<Row>) {
  const phone = useMediaQuery(phoneQuery);
  const words = props.columns.filter((column) => !column.numeric).length;
  const cards = (props.onPhone ?? (words > 3 ? 'cards' : 'table')) === 'cards';
  return phone && cards ? <TableCards {...props} /> : <PlainTable {...props} />;
}

// A phone shows a card or two at a time: whoever wants another row searches, or asks for more.
const cardsAtFirst = 15;
const cardsMore = 30;

function TableCards<Row>({ caption, captionHidden, columns, rows, rowKey, empty }: TableProps<Row>) {
  const text = useText('ui');
  const named = columns.filter((column) => column.rowHeader);
  // A column without a name holds a sign: it stands beside what names the row.
  const signs = columns.filter((column) => column.header === '' && !column.rowHeader);
  const others = columns.filter((column) => !named.includes(column) && !signs.includes(column));
  const [shownCount, setShownCount] = useState(cardsAtFirst);
  const shown = rows.slice(0, shownCount);
  const hidden = rows.length - shown.length;
  return (
    <section aria-label={caption}>
      {!captionHidden && <h2 className={styles.caption}>{caption}</h2>}
      {rows.length === 0 && <p>{empty}</p>}
      <ul className={styles.cards}>
        {shown.map((row) => (
          <li key={rowKey(row)} className={styles.card}>
            <strong className={styles.cardName}>
              {[...signs, ...named].map((column) => (
                <span key={column.key}>{column.cell(row)}</span>
              ))}
            </strong>
            <KeyValues
              items={others.map((column) => ({ name: column.header, value: column.cell(row) })).filter(says)}
            />
          </li>
        ))}
      </ul>
      {hidden > 0 && (
        <p className={styles.more}>
          <Button wide onClick={() => setShownCount((count) => count + cardsMore)}>
            {text('show-more', { count: Math.min(hidden, cardsMore), hidden })}
          </Button>
        </p>
      )}
    </section>
  );
}

/** A card has no column to keep: what says nothing leaves its line out. */
const says = ({ value }: { value: ReactNode }): boolean =>
  value !== '' && value !== null && value !== undefined && value !== false;

function PlainTable<Row>({ caption, captionHidden, columns: wanted, rows, rowKey, empty }: TableProps<Row>) {
  // A column that says nothing in any row takes the room of those that do.
  const columns = wanted.filter(
    (column) =>
      rows.length === 0 || column.footer !== undefined || rows.some((row) => says({ value: column.cell(row) })),
  );
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
