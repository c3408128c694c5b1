import { useSuspenseQuery } from '@tanstack/react-query';
import { useSearch } from '@tanstack/react-router';
import { useState } from 'react';
import { addresses } from '../../app/addresses.ts';
import { punchItemsQuery } from '../../app/reads.ts';
import { textOf } from '../../app/search-params.ts';
import { useGo } from '../../app/use-go.ts';
import { useReasonAgainst } from '../../app/use-reason-against.ts';
import { useShutdownId } from '../../app/use-shutdown.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { Button } from '../../ui/button.tsx';
import { PageHeader } from '../../ui/page-header.tsx';
import { Sentence, SentenceChoice } from '../../ui/sentence.tsx';
import { PackWays } from '../packs/pack-ways.tsx';
import { PunchTable } from './punch-table.tsx';
import { RaisePunchDialog } from './raise-punch-dialog.tsx';

const closedChoices = ['no', 'yes', 'any'] as const;
const categories = ['any', 'A', 'B', 'C'] as const;

/** Punch items: what must be closed before the test, before hand-over, and after. */
export function PunchPage() {
  const reasonAgainst = useReasonAgainst();
  const text = useText('punch');
  const format = useFormat();
  const go = useGo();
  const shutdownId = useShutdownId();
  const address = useSearch({ strict: false }) as Record<string, unknown>;
  const closed = closedChoices.find((each) => each === textOf(address.closed)) ?? 'no';
  const category = categories.find((each) => each === textOf(address.category)) ?? 'any';
  const { data } = useSuspenseQuery(punchItemsQuery(shutdownId, closed));
  const [raising, setRaising] = useState(false);
  const rows = data.rows.filter((row) => category === 'any' || row.category === category);
  const openA = data.rows.filter((row) => row.category === 'A' && row.closedAt === null).length;
  const show = (next: { closed?: string | undefined; category?: string | undefined }) =>
    go(addresses.punchItems(shutdownId, { closed, category, ...next }), { replace: true });
  return (
    <>
      <PageHeader
        over={<PackWays shutdownId={shutdownId} />}
        title={
          closed === 'yes'
            ? text('title-closed', { count: rows.length, shown: format.count(rows.length) })
            : text('title', { count: openA, shown: format.count(openA) })
        }
        documentTitle={text('punch-items')}
        sub={text('sub')}
        actions={
          <Button
            kind="primary"
            disabledReason={reasonAgainst(data.actions, 'punch-raised')}
            onClick={() => setRaising(true)}
          >
            {text('raise')}
          </Button>
        }
      />
      <Sentence label={text('filter')}>
        {text('items-of')}{' '}
        <SentenceChoice
          label={text('category')}
          shown={category === 'any' ? text('any-category') : text('category-of', { category })}
          value={[category]}
          onChange={([value]) => show({ category: value })}
          options={categories.map((value) => ({
            value,
            label: value === 'any' ? text('any-category') : value,
            ...(value === 'any' ? {} : { detail: text(`category-${value}`) }),
          }))}
        />{' '}
        {text('that-are')}{' '}
        <SentenceChoice
          label={text('closed')}
          shown={text(`closed-${closed}`)}
          value={[closed]}
          onChange={([value]) => show({ closed: value })}
          options={closedChoices.map((value) => ({ value, label: text(`closed-${value}`) }))}
        />
      </Sentence>
      <PunchTable
        shutdownId={shutdownId}
        caption={text('punch-items')}
        captionHidden
        rows={rows}
        empty={text('none')}
      />
      {raising && <RaisePunchDialog onClose={() => setRaising(false)} />}
    </>
  );
}
