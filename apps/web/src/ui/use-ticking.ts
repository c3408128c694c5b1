import { useRef } from 'react';

export interface Ticking<Row> {
  /** undefined = not loaded */
  readonly rows: readonly (Row | undefined)[];
  readonly rowKey: (row: Row) => string;
  readonly selected?: ReadonlySet<string>;
  readonly onSelectedChange?: (selected: ReadonlySet<string>) => void;
}

/** Ticks rows: one, or with `range` all from the row ticked last to this one, which all follow this one. */
export function useTicking<Row>({ rows, rowKey, selected, onSelectedChange }: Ticking<Row>) {
  const anchor = useRef<number | null>(null);
  return (index: number, range: boolean) => {
    const row = rows[index];
    if (!selected || !onSelectedChange || row === undefined) return;
    const on = !selected.has(rowKey(row));
    const from = range && anchor.current !== null ? anchor.current : index;
    const between = rows.slice(Math.min(from, index), Math.max(from, index) + 1);
    // A range over rows that are not loaded would leave some out unsaid: then it is this row alone.
    const reach = between.includes(undefined) ? [row] : between;
    const next = new Set(selected);
    for (const each of reach) {
      if (each === undefined) continue;
      if (on) next.add(rowKey(each));
      else next.delete(rowKey(each));
    }
    anchor.current = index;
    onSelectedChange(next);
  };
}
