import { useText } from '../texts/text-provider.tsx';
import { Chart } from './chart.tsx';
import { classNames } from './class-names.ts';
import { Legend } from './legend.tsx';
import { Link } from './link.tsx';
import { ShareBar, ShareSwatch } from './share-bar.tsx';
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

/** Shares of a whole as bars on one ramp, with a mark for the plan; the same figures as a table at a press. */
export function StackedBar({ title, parts, markName, rows, formatNumber }: StackedBarProps) {
  const text = useText('ui');
  return (
    <Chart
      title={title}
      toTable={text('show-as-table')}
      toDrawing={text('show-as-bars')}
      table={<FigureTable {...{ title, parts, markName, rows, formatNumber }} />}
    >
      <ul className={styles.rows}>
        {rows.map((row) => (
          <BarRow key={row.key} row={row} />
        ))}
      </ul>
      <Legend
        entries={[
          ...parts.map((name, part) => ({ name, swatch: <ShareSwatch part={part} /> })),
          ...(markName === undefined ? [] : [{ name: markName, swatch: <ShareSwatch part="mark" /> }]),
        ]}
      />
    </Chart>
  );
}

function BarRow({ row }: { row: StackedBarRow }) {
  return (
    <li className={styles.row}>
      <span>{row.href === undefined ? row.label : <Link href={row.href}>{row.label}</Link>}</span>
      <span className={styles.bar}>
        <ShareBar values={row.values} total={row.total} mark={row.mark} />
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
