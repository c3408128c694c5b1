import { useId, useState } from 'react';
import { useText } from '../texts/text-provider.tsx';
import { classNames } from './class-names.ts';
import { Link } from './link.tsx';
import styles from './stacked-bar.module.css';
import { Table } from './table.tsx';

export interface StackedBarRow {
  readonly key: string;
  readonly label: string;
  readonly href?: string;
  /** one number per part, in the order of `parts`; together at most `total` */
  readonly values: readonly number[];
  readonly total: number;
  /** where it should stand now, in the same unit */
  readonly mark?: number;
  /** formatted words at the end of the bar */
  readonly valueText: string;
  readonly attention?: boolean;
}

export interface StackedBarProps {
  readonly title: string;
  /** names of up to three parts, from the darkest step of the ramp to the lightest */
  readonly parts: readonly string[];
  readonly markName?: string;
  readonly rows: readonly StackedBarRow[];
  readonly formatNumber: (value: number) => string;
}

const steps = [styles.step1, styles.step2, styles.step3];

/** Shares of a whole as bars on one ramp, with a mark for the plan; the same figures as a table at a press. */
export function StackedBar({ title, parts, markName, rows, formatNumber }: StackedBarProps) {
  const text = useText('ui');
  const titleId = useId();
  const [asTable, setAsTable] = useState(false);
  return (
    <section className={styles.chart} aria-labelledby={titleId}>
      <div className={styles.head}>
        <h2 id={titleId}>{title}</h2>
        <button type="button" className={styles.switch} onClick={() => setAsTable(!asTable)}>
          {text(asTable ? 'show-as-bars' : 'show-as-table')}
        </button>
      </div>
      {asTable ? (
        <FigureTable {...{ title, parts, markName, rows, formatNumber }} />
      ) : (
        <>
          <ul className={styles.rows} style={{ margin: 0, padding: 0, listStyle: 'none' }}>
            {rows.map((row) => (
              <BarRow key={row.key} row={row} />
            ))}
          </ul>
          <p className={styles.legend} aria-hidden="true">
            {parts.map((part, index) => (
              <span key={part} className={styles.key}>
                <span className={classNames(styles.swatch, steps[index])} />
                {part}
              </span>
            ))}
            {markName !== undefined && (
              <span className={styles.key}>
                <span className={classNames(styles.swatch, styles.mark)} />
                {markName}
              </span>
            )}
          </p>
        </>
      )}
    </section>
  );
}

function BarRow({ row }: { row: StackedBarRow }) {
  const share = (value: number) => `${row.total > 0 ? (100 * value) / row.total : 0}%`;
  return (
    <li className={styles.row}>
      <span>{row.href === undefined ? row.label : <Link href={row.href}>{row.label}</Link>}</span>
      <span className={styles.track} aria-hidden="true">
        {row.values.map((value, index) => (
          <span
            // biome-ignore lint/suspicious/noArrayIndexKey: the parts have a fixed order and no other name
            key={index}
            className={classNames(styles.part, steps[index])}
            style={{ inlineSize: share(value) }}
          />
        ))}
        {row.mark !== undefined && <span className={styles.mark} style={{ insetInlineStart: share(row.mark) }} />}
      </span>
      <span className={classNames(styles.value, row.attention && styles.attention)}>{row.valueText}</span>
    </li>
  );
}

type FigureTableProps = Omit<StackedBarProps, 'markName'> & { markName: string | undefined };

function FigureTable({ title, parts, markName, rows, formatNumber }: FigureTableProps) {
  const text = useText('ui');
  return (
    <Table
      caption={title}
      captionHidden
      rows={rows}
      rowKey={(row) => row.key}
      columns={[
        {
          key: 'label',
          header: '',
          rowHeader: true,
          cell: (row: StackedBarRow) => (row.href === undefined ? row.label : <Link href={row.href}>{row.label}</Link>),
        },
        ...parts.map((part, index) => ({
          key: part,
          header: part,
          numeric: true,
          cell: (row: StackedBarRow) => formatNumber(row.values[index] ?? 0),
        })),
        ...(markName === undefined
          ? []
          : [
              {
                key: 'mark',
                header: markName,
                numeric: true,
                cell: (row: StackedBarRow) => (row.mark === undefined ? '' : formatNumber(row.mark)),
              },
            ]),
        {
          key: 'total',
          header: text('total'),
          numeric: true,
          cell: (row: StackedBarRow) => formatNumber(row.total),
        },
      ]}
    />
  );
}
