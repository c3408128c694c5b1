import type { BlindsAnswer } from '@seatwell/contract';
import { useSuspenseQuery } from '@tanstack/react-query';
import { useSearch } from '@tanstack/react-router';
import { useState } from 'react';
import { addresses } from '../../app/addresses.ts';
import { blindsQuery } from '../../app/reads.ts';
import { textOf } from '../../app/search-params.ts';
import { useGo } from '../../app/use-go.ts';
import { useReasonAgainst } from '../../app/use-reason-against.ts';
import { useShutdownId } from '../../app/use-shutdown.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { Button } from '../../ui/button.tsx';
import { Figure, FigureRow } from '../../ui/figure.tsx';
import { PageHeader } from '../../ui/page-header.tsx';
import { Sentence, SentenceChoice } from '../../ui/sentence.tsx';
import { BlindTable } from './blind-table.tsx';
import { BlindWays } from './blind-ways.tsx';
import { PlanBlindDialog } from './plan-blind-dialog.tsx';

const states = ['any', 'planned', 'in', 'out', 'overdue'] as const;
type State = (typeof states)[number];

/** Blinds of a state; overdue is a blind that is in after the day by which it should be out. */
export function blindsOf(rows: BlindsAnswer['rows'], state: State): BlindsAnswer['rows'] {
  if (state === 'any') return rows;
  return rows.filter((row) => (state === 'overdue' ? row.overdue : row.state === state));
}

/** Blinds: what goes in must come out again, counted. */
export function BlindsPage() {
  const reasonAgainst = useReasonAgainst();
  const text = useText('blinds');
  const format = useFormat();
  const go = useGo();
  const shutdownId = useShutdownId();
  const { data } = useSuspenseQuery(blindsQuery(shutdownId));
  const asked = textOf((useSearch({ strict: false }) as Record<string, unknown>).state);
  const state = states.find((each) => each === asked) ?? 'any';
  const [planning, setPlanning] = useState(false);
  const { counts } = data;
  const href = (of: State) => addresses.blinds(shutdownId, { state: of });
  return (
    <>
      <PageHeader
        over={<BlindWays shutdownId={shutdownId} />}
        title={
          counts.in === 0
            ? text('title-none-in')
            : text(counts.overdue === 0 ? 'title-in' : 'title-in-overdue', {
                count: counts.in,
                shown: format.count(counts.in),
                overdue: format.count(counts.overdue),
              })
        }
        documentTitle={text('blinds')}
        sub={text('sub', { in: format.count(counts.in + counts.out), out: format.count(counts.out) })}
        actions={
          <Button disabledReason={reasonAgainst(data.actions, 'blind-planned')} onClick={() => setPlanning(true)}>
            {text('plan')}
          </Button>
        }
      />
      <FigureRow>
        <Figure value={format.count(counts.planned)} label={text('count-planned')} href={href('planned')} />
        <Figure value={format.count(counts.in)} label={text('count-in')} href={href('in')} />
        <Figure value={format.count(counts.out)} label={text('count-out')} href={href('out')} />
        <Figure
          value={format.count(counts.overdue)}
          label={text('count-overdue')}
          tone={counts.overdue > 0 ? 'attention' : 'plain'}
          href={href('overdue')}
        />
      </FigureRow>
      <Sentence label={text('filter')}>
        {text('blinds-that-are')}{' '}
        <SentenceChoice
          label={text('state')}
          shown={text(`state-${state}`)}
          value={[state]}
          onChange={([value]) => go(addresses.blinds(shutdownId, { state: value }), { replace: true })}
          options={states.map((value) => ({ value, label: text(`state-${value}`) }))}
        />
      </Sentence>
      <BlindTable shutdownId={shutdownId} rows={blindsOf(data.rows, state)} />
      {planning && <PlanBlindDialog onClose={() => setPlanning(false)} />}
    </>
  );
}
