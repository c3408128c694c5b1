import { type ReactNode, useId, useState } from 'react';
import styles from './chart.module.css';

export interface ChartProps {
  readonly title: string;
  /** what the button says while the drawing is shown, and while the table is */
  readonly toTable: string;
  readonly toDrawing: string;
  /** the same figures as a table */
  readonly table: ReactNode;
  /** what the figures say in words; shown with both */
  readonly words?: ReactNode;
  /** the drawing */
  readonly children: ReactNode;
}

/** A drawing of figures under its name; the same figures as a table at a press. */
export function Chart({ title, toTable, toDrawing, table, words, children }: ChartProps) {
  const titleId = useId();
  const [asTable, setAsTable] = useState(false);
  return (
    <section className={styles.chart} aria-labelledby={titleId}>
      <div className={styles.head}>
        <h2 id={titleId}>{title}</h2>
        <button type="button" className={styles.switch} onClick={() => setAsTable(!asTable)}>
          {asTable ? toDrawing : toTable}
        </button>
      </div>
      {words}
      {asTable ? table : children}
    </section>
  );
}
