import { useVirtualizer } from '@tanstack/react-virtual';
import {
  type CSSProperties,
  type KeyboardEvent,
  type MouseEvent,
  type ReactNode,
  useCallback,
  useEffect,
  useMemo,
  useRef,
  useState,
} from 'react';
import { useText } from '../texts/text-provider.tsx';
import { keepPlace, keptPlace } from './kept-place.ts';
import type { RowRange } from './row-slots.ts';
import { phoneQuery, useMediaQuery } from './use-media-query.ts';
import { useRowHeight } from './use-row-height.ts';
import { useRowSlots } from './use-row-slots.ts';
import { useShownRows } from './use-shown-rows.ts';
import { useTicking } from './use-ticking.ts';
import { VirtualCards } from './virtual-cards.tsx';
import { VirtualHead } from './virtual-head.tsx';
import { VirtualRow } from './virtual-row.tsx';
import styles from './virtual-table.module.css';

export interface VirtualColumn<Row> {
  readonly key: string;
  readonly header: string;
  readonly cell: (row: Row) => ReactNode;
  /** a CSS grid track, for example "minmax(8rem, 1fr)" */
  readonly width: string;
  readonly numeric?: boolean;
  /** its track holds every value whole: nothing has to be cut, which is drawn faster */
  readonly whole?: boolean;
  readonly rowHeader?: boolean;
  /** present when the table can be sorted by it */
  readonly sorted?: 'ascending' | 'descending' | 'none';
}

export interface VirtualTableProps<Row> {
  readonly label: string;
  readonly columns: readonly VirtualColumn<Row>[];
  /** the rows in order; undefined = not loaded */
  readonly rows: readonly (Row | undefined)[];
  readonly rowKey: (row: Row) => string;
  /** what the row is called, for its checkbox */
  readonly rowName: (row: Row) => string;
  readonly onOpen?: (row: Row) => void;
  readonly selected?: ReadonlySet<string>;
  readonly onSelectedChange?: (selected: ReadonlySet<string>) => void;
  readonly onSort?: (columnKey: string) => void;
  /** told which rows are in sight, so that they can be loaded */
  readonly onShown?: (first: number, last: number) => void;
  /** names the visit of the page: who comes back to it by the browser's back finds the row that was opened */
  readonly visit?: string | undefined;
  /** the row as a card, for phones */
  readonly card?: (row: Row) => ReactNode;
}

/**
 * A table of any length: only the rows in sight are in the page. One tab stop; arrow keys, Page Up and Down,
 * Home and End move from row to row, Enter opens, Space ticks, with Shift from the last ticked row on.
 */
export function VirtualTable<Row>(props: VirtualTableProps<Row>) {
  const phone = useMediaQuery(phoneQuery);
  return phone && props.card ? <VirtualCards {...props} card={props.card} /> : <VirtualGrid {...props} />;
}

function VirtualGrid<Row>(props: VirtualTableProps<Row>) {
  const { columns, rows, rowKey, selected } = props;
  const rowCount = rows.length;
  const frame = useRef<HTMLDivElement>(null);
  const [kept] = useState(() => keptPlace(props.visit));
  const [current, setCurrent] = useState(kept?.row ?? 0);
  const [focused, setFocused] = useState<number>();
  const rowHeight = useRowHeight();

  const virtualizer = useVirtualizer({
    count: rowCount,
    getScrollElement: () => frame.current,
    estimateSize: () => rowHeight,
    overscan: 0,
    initialOffset: kept?.offset ?? 0,
  });
  const seen = virtualizer.getVirtualItems();
  const inSight = rangeOf(seen);
  const shown = useRowSlots({ inSight, rowCount, scrolling: virtualizer.isScrolling, focused });

  // biome-ignore lint/correctness/useExhaustiveDependencies: sizes are taken anew when rows grow
  useEffect(() => virtualizer.measure(), [rowHeight]);

  useShownRows(seen, props.onShown);

  const focusRow = useCallback((index: number) => {
    const row = frame.current?.querySelector<HTMLElement>(`[data-index="${index}"]`);
    row?.focus();
    return row != null;
  }, []);

  // The row that was opened is where the person goes on after coming back.
  useEffect(() => {
    if (!kept) return;
    const next = requestAnimationFrame(() => focusRow(kept.row));
    return () => cancelAnimationFrame(next);
  }, [kept, focusRow]);

  const goTo = (index: number) => {
    const next = Math.max(0, Math.min(index, rowCount - 1));
    setCurrent(next);
    virtualizer.scrollToIndex(next);
    // At once, so that quick keys count from it; a row far away comes into the page with the next frame.
    if (!focusRow(next)) requestAnimationFrame(() => focusRow(next));
  };

  const open = (row: Row, index: number) => {
    keepPlace(props.visit, { offset: frame.current?.scrollTop ?? 0, row: index });
    props.onOpen?.(row);
  };

  const tick = useTicking(props);
  const tickName = useTickName();

  // The table listens for its rows: what a row is given stays the same from frame to frame.
  const press = (event: KeyboardEvent) => {
    const index = indexOf(event.target as HTMLElement);
    if (index === undefined) return;
    const page = Math.max(1, Math.floor((frame.current?.clientHeight ?? 400) / rowHeight) - 2);
    const moves: Record<string, number> = {
      ArrowDown: index + 1,
      ArrowUp: index - 1,
      PageDown: index + page,
      PageUp: index - page,
      Home: 0,
      End: rowCount - 1,
    };
    const target = moves[event.key];
    const row = rows[index];
    if (target !== undefined) goTo(target);
    else if (event.key === 'Enter' && row !== undefined && props.onOpen) open(row, index);
    else if (event.key === ' ' && selected) tick(index, event.shiftKey);
    else return;
    event.preventDefault();
  };

  const click = (event: MouseEvent) => {
    const target = event.target as Element;
    const index = indexOf(target.closest<HTMLElement>('[data-index]'));
    const row = index === undefined ? undefined : rows[index];
    if (index === undefined || row === undefined) return;
    if (target.matches('[data-tick]')) tick(index, event.shiftKey);
    // Links and boxes inside the row keep their own meaning.
    else if (props.onOpen && !target.closest('a, button, input, label')) open(row, index);
  };

  const tracks = [...(selected ? ['44px'] : []), ...columns.map((column) => column.width)].join(' ');
  const reachable = shown.some((slot) => slot.index === current) ? current : (inSight?.first ?? 0);

  return (
    <div ref={frame} className={styles.frame} style={{ '--columns': tracks } as CSSProperties}>
      {/* biome-ignore lint/a11y/useSemanticElements: a table element cannot hold rows that stand at a distance */}
      <div
        role="grid"
        aria-label={props.label}
        aria-rowcount={rowCount + 1}
        aria-colcount={columns.length + (selected ? 1 : 0)}
        aria-multiselectable={selected ? true : undefined}
        className={styles.grid}
      >
        <VirtualHead
          columns={columns}
          rows={rows}
          rowKey={rowKey}
          selected={selected}
          onSelectedChange={props.onSelectedChange}
          onSort={props.onSort}
        />
        {/* biome-ignore lint/a11y/useSemanticElements: a table element cannot hold rows that stand at a distance */}
        <div
          role="rowgroup"
          className={styles.body}
          style={{ blockSize: virtualizer.getTotalSize() }}
          onClick={click}
          onKeyDown={press}
          onFocus={(event) => {
            const index = indexOf(event.target);
            if (index !== undefined) setCurrent(index);
            setFocused(indexOf(event.target.closest('[data-index]')));
          }}
          onBlur={() => setFocused(undefined)}
        >
          {shown.map(({ key, index }) => {
            const row = rows[index];
            return (
              <VirtualRow
                key={key}
                index={index}
                start={index * rowHeight}
                row={row}
                tickName={tickName(row === undefined ? '' : props.rowName(row))}
                columns={columns}
                reachable={index === reachable}
                selected={selected === undefined ? undefined : row !== undefined && selected.has(rowKey(row))}
                opens={row !== undefined && props.onOpen !== undefined}
              />
            );
          })}
        </div>
      </div>
    </div>
  );
}

/** The name of a row's checkbox; its text is looked up once, and not for every row of every frame. */
function useTickName(): (name: string) => string {
  const text = useText('ui');
  return useMemo(() => {
    const [before = '', after = ''] = text('select-row', { name: '\n' }).split('\n');
    return (name) => `${before}${name}${after}`;
  }, [text]);
}

function rangeOf(seen: readonly { readonly index: number }[]): RowRange | undefined {
  const [first] = seen;
  const last = seen.at(-1);
  return first && last && { first: first.index, last: last.index };
}

/** The row that an element is; undefined for what stands inside or outside of rows. */
function indexOf(element: HTMLElement | null): number | undefined {
  const index = element?.dataset.index;
  return index === undefined ? undefined : Number(index);
}
