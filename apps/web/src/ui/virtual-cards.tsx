import { useWindowVirtualizer } from '@tanstack/react-virtual';
import { type ReactNode, useLayoutEffect, useRef, useState } from 'react';
import { useText } from '../texts/text-provider.tsx';
import { useShownRows } from './use-shown-rows.ts';
import { useTicking } from './use-ticking.ts';
import styles from './virtual-table.module.css';
import type { VirtualTableProps } from './virtual-table.tsx';

type VirtualCardsProps<Row> = VirtualTableProps<Row> & { readonly card: (row: Row) => ReactNode };

/** The rows of a VirtualTable as cards that scroll with the page: what a phone shows. */
export function VirtualCards<Row>(props: VirtualCardsProps<Row>) {
  const { rows, rowKey, rowName, selected, card, onOpen } = props;
  const text = useText('ui');
  const rowCount = rows.length;
  const list = useRef<HTMLUListElement>(null);
  const [top, setTop] = useState(0);
  const tick = useTicking(props);
  const virtualizer = useWindowVirtualizer({
    count: rowCount,
    estimateSize: () => 92,
    overscan: 8,
    scrollMargin: top,
  });
  const shown = virtualizer.getVirtualItems();

  useLayoutEffect(() => setTop(list.current?.offsetTop ?? 0), []);
  useShownRows(shown, props.onShown);

  return (
    <ul ref={list} className={styles.cards} aria-label={props.label} style={{ blockSize: virtualizer.getTotalSize() }}>
      {shown.map((item) => {
        const row = rows[item.index];
        const ticked = row !== undefined && selected?.has(rowKey(row));
        return (
          <li
            key={item.key}
            ref={virtualizer.measureElement}
            data-index={item.index}
            data-selected={ticked ? '' : undefined}
            aria-setsize={rowCount}
            aria-posinset={item.index + 1}
            className={styles.card}
            style={{ transform: `translateY(${item.start - top}px)` }}
          >
            {selected && row !== undefined && (
              <label className={styles.tick}>
                <input
                  type="checkbox"
                  aria-label={text('select-row', { name: rowName(row) })}
                  checked={ticked ?? false}
                  onChange={() => tick(item.index, false)}
                />
              </label>
            )}
            <CardBody row={row} card={card} onOpen={onOpen} />
          </li>
        );
      })}
    </ul>
  );
}

interface CardBodyProps<Row> {
  readonly row: Row | undefined;
  readonly card: (row: Row) => ReactNode;
  readonly onOpen: ((row: Row) => void) | undefined;
}

function CardBody<Row>({ row, card, onOpen }: CardBodyProps<Row>) {
  if (row === undefined) return <span className={styles.pending} style={{ margin: 16 }} aria-hidden="true" />;
  if (!onOpen) return <div className={styles.open}>{card(row)}</div>;
  return (
    <button type="button" className={styles.open} onClick={() => onOpen(row)}>
      {card(row)}
    </button>
  );
}
