import type { ItemsAnswer } from '@seatwell/contract';
import { useSuspenseQuery } from '@tanstack/react-query';
import { useSearch } from '@tanstack/react-router';
import { useState } from 'react';
import { addresses } from '../../app/addresses.ts';
import { itemsQuery } from '../../app/reads.ts';
import { textOf } from '../../app/search-params.ts';
import { useGo } from '../../app/use-go.ts';
import { useReasonAgainst } from '../../app/use-reason-against.ts';
import { useShutdownId } from '../../app/use-shutdown.ts';
import { useTrade } from '../../app/use-trade.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { Button } from '../../ui/button.tsx';
import { PageHeader } from '../../ui/page-header.tsx';
import { Sentence, SentenceChoice } from '../../ui/sentence.tsx';
import { BlindWays } from '../blinds/blind-ways.tsx';
import { ItemTable } from './item-table.tsx';
import { RegisterItemDialog } from './register-item-dialog.tsx';
import { isAway, WHEREABOUTS } from './whereabouts.ts';

const filters = ['any', 'away', ...WHEREABOUTS] as const;
type Filter = (typeof filters)[number];

/** Items at a place; away is whatever must still come back to its joints. */
export function itemsAt(rows: ItemsAnswer['rows'], filter: Filter): ItemsAnswer['rows'] {
  if (filter === 'any') return rows;
  return rows.filter((row) => (filter === 'away' ? isAway(row.whereabouts) : row.whereabouts === filter));
}

/** What joints hold, such as valves, spools and covers, and where it is while they are open. */
export function ItemsPage() {
  const text = useText('items');
  const trade = useTrade();
  const format = useFormat();
  const go = useGo();
  const shutdownId = useShutdownId();
  const reasonAgainst = useReasonAgainst();
  const { data } = useSuspenseQuery(itemsQuery(shutdownId));
  const asked = textOf((useSearch({ strict: false }) as Record<string, unknown>).at);
  const filter = filters.find((each) => each === asked) ?? 'any';
  const [registering, setRegistering] = useState(false);
  const away = itemsAt(data.rows, 'away').length;
  const word = (of: Filter) => (of === 'any' || of === 'away' ? text(`at-${of}`) : trade.word('whereabouts', of));
  return (
    <>
      <PageHeader
        over={<BlindWays shutdownId={shutdownId} />}
        title={
          away === 0
            ? text('title-none-away')
            : text('title-away', { count: away, shown: format.count(away), all: format.count(data.rows.length) })
        }
        documentTitle={text('items')}
        sub={text('sub')}
        actions={
          <Button disabledReason={reasonAgainst(data.actions, 'item-registered')} onClick={() => setRegistering(true)}>
            {text('register')}
          </Button>
        }
      />
      <Sentence label={text('filter')}>
        {text('items-that-are')}{' '}
        <SentenceChoice
          label={text('whereabouts')}
          shown={word(filter)}
          value={[filter]}
          onChange={([value]) => go(addresses.items(shutdownId, { at: value }), { replace: true })}
          options={filters.map((value) => ({ value, label: word(value) }))}
        />
      </Sentence>
      <ItemTable
        shutdownId={shutdownId}
        rows={itemsAt(data.rows, filter)}
        against={reasonAgainst(data.actions, 'item-moved')}
      />
      {registering && <RegisterItemDialog onClose={() => setRegistering(false)} />}
    </>
  );
}
