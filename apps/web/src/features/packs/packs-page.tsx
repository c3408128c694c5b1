import type { PackSummary } from '@seatwell/contract';
import { useSuspenseQuery } from '@tanstack/react-query';
import { useSearch } from '@tanstack/react-router';
import { useState } from 'react';
import { addresses } from '../../app/addresses.ts';
import { packsQuery } from '../../app/reads.ts';
import { listOf, textOf } from '../../app/search-params.ts';
import { useGo } from '../../app/use-go.ts';
import { useReasonAgainst } from '../../app/use-reason-against.ts';
import { useShutdownId } from '../../app/use-shutdown.ts';
import { useTrade } from '../../app/use-trade.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { Button } from '../../ui/button.tsx';
import { EmptyState } from '../../ui/empty-state.tsx';
import { PageHeader } from '../../ui/page-header.tsx';
import { Sentence, SentenceChoice } from '../../ui/sentence.tsx';
import { PackTable } from './pack-table.tsx';
import { PackWays } from './pack-ways.tsx';
import { PlanPackDialog } from './plan-pack-dialog.tsx';

const states = ['planned', 'ready', 'released', 'held', 'proven'] as const;
const every = 'any';

interface PackSearch {
  readonly state: readonly string[];
  readonly area: string | undefined;
}

/** Packs behind the filters of the address. */
export function packsBehind(rows: readonly PackSummary[], { state, area }: PackSearch): readonly PackSummary[] {
  return rows.filter(
    (row) => (state.length === 0 || state.includes(row.state)) && (area === undefined || row.area?.areaId === area),
  );
}

/** Every test pack: where it stands, what stops it, and whose move it is. */
export function PacksPage() {
  const reasonAgainst = useReasonAgainst();
  const text = useText('packs');
  const trade = useTrade();
  const format = useFormat();
  const go = useGo();
  const shutdownId = useShutdownId();
  const { data } = useSuspenseQuery(packsQuery(shutdownId));
  const address = useSearch({ strict: false }) as Record<string, unknown>;
  const search: PackSearch = { state: listOf(address.state), area: textOf(address.area) };
  const [planning, setPlanning] = useState(false);
  const rows = packsBehind(data.rows, search);
  const proven = data.rows.filter((row) => row.state === 'proven').length;
  const areas = [...new Map(data.rows.flatMap((row) => (row.area ? [[row.area.areaId, row.area]] : []))).values()];
  const show = (next: Partial<PackSearch>) =>
    go(addresses.packs(shutdownId, { ...search, ...next }), { replace: true });
  return (
    <>
      <PageHeader
        over={<PackWays shutdownId={shutdownId} />}
        title={text('title', {
          count: data.rows.length,
          proven: format.count(proven),
          total: format.count(data.rows.length),
        })}
        documentTitle={text('packs')}
        actions={
          <Button disabledReason={reasonAgainst(data.actions, 'pack-planned')} onClick={() => setPlanning(true)}>
            {text('plan-pack')}
          </Button>
        }
      />
      {data.rows.length === 0 ? (
        <EmptyState title={text('none')}>
          <p>{text('none-detail')}</p>
        </EmptyState>
      ) : (
        <>
          <Sentence label={text('filter')}>
            {text('packs-that-are')}{' '}
            <SentenceChoice
              label={text('state')}
              multiple
              shown={
                search.state.length === 0
                  ? text('any-state')
                  : search.state.map((each) => trade.word('packstate', each)).join(', ')
              }
              value={search.state}
              onChange={(state) => show({ state })}
              options={states.map((value) => ({ value, label: trade.word('packstate', value) }))}
            />{' '}
            {text('in')}{' '}
            <SentenceChoice
              label={text('area')}
              shown={areas.find((area) => area.areaId === search.area)?.name ?? text('any-area')}
              value={[search.area ?? every]}
              onChange={([area]) => show({ area: area === every ? undefined : area })}
              options={[
                { value: every, label: text('any-area') },
                ...areas.map((area) => ({ value: area.areaId, label: area.name })),
              ]}
            />
          </Sentence>
          <PackTable shutdownId={shutdownId} rows={rows} />
        </>
      )}
      {planning && <PlanPackDialog onClose={() => setPlanning(false)} />}
    </>
  );
}
