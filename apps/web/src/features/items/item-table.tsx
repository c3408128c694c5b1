import type { ItemsAnswer } from '@seatwell/contract';
import { useState } from 'react';
import { addresses } from '../../app/addresses.ts';
import { useTrade } from '../../app/use-trade.ts';
import { useText } from '../../texts/text-provider.tsx';
import { Button } from '../../ui/button.tsx';
import { Link } from '../../ui/link.tsx';
import { Table } from '../../ui/table.tsx';
import styles from './items.module.css';
import { MoveItemDialog } from './move-item-dialog.tsx';
import { isAway } from './whereabouts.ts';

export type ItemRow = ItemsAnswer['rows'][number];

interface Props {
  readonly shutdownId: string;
  readonly rows: readonly ItemRow[];
  /** why nothing can be moved by the person, if so */
  readonly against: string | undefined;
}

/** Items one by one: what they are, the joints that hold them, and where they are now. */
export function ItemTable({ shutdownId, rows, against }: Props) {
  const text = useText('items');
  const trade = useTrade();
  const [moved, setMoved] = useState<ItemRow | null>(null);
  return (
    <>
      <Table
        caption={text('items')}
        captionHidden
        rows={rows}
        rowKey={(row) => row.itemId}
        empty={text('none')}
        columns={[
          { key: 'tag', header: text('tag'), rowHeader: true, cell: (row) => row.tag },
          {
            key: 'kind',
            header: text('kind'),
            cell: (row) => [trade.word('item', row.kind), row.description].filter(Boolean).join(', '),
          },
          {
            key: 'joints',
            header: text('joints'),
            cell: (row) =>
              row.joints.map((joint, index) => (
                <span key={joint.jointId}>
                  {index > 0 && ' · '}
                  <Link href={addresses.joint(shutdownId, joint.jointId)}>{joint.tag}</Link>
                </span>
              )),
          },
          {
            key: 'whereabouts',
            header: text('whereabouts'),
            cell: (row) => (
              <span className={isAway(row.whereabouts) ? styles.away : undefined}>
                {trade.word('whereabouts', row.whereabouts)}
              </span>
            ),
          },
          ...(against === undefined
            ? [
                {
                  key: 'move',
                  header: text('record'),
                  cell: (row: ItemRow) => (
                    <Button label={text('move-of', { tag: row.tag })} onClick={() => setMoved(row)}>
                      {text('move')}
                    </Button>
                  ),
                },
              ]
            : []),
        ]}
      />
      {moved && <MoveItemDialog row={moved} onClose={() => setMoved(null)} />}
    </>
  );
}
