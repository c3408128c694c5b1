import type { ProceduresAnswer } from '@seatwell/contract';
import { useSuspenseQuery } from '@tanstack/react-query';
import { addresses } from '../../app/addresses.ts';
import { proceduresQuery } from '../../app/reads.ts';
import { useGo } from '../../app/use-go.ts';
import { useReasonAgainst } from '../../app/use-reason-against.ts';
import { useTrade } from '../../app/use-trade.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { Button } from '../../ui/button.tsx';
import { EmptyState } from '../../ui/empty-state.tsx';
import { Link } from '../../ui/link.tsx';
import { PageHeader } from '../../ui/page-header.tsx';
import { Table } from '../../ui/table.tsx';

type Row = ProceduresAnswer['rows'][number];

/** Every procedure with its revisions: what crews are briefed on. */
export function ProceduresPage() {
  const reasonAgainst = useReasonAgainst();
  const text = useText('engineering');
  const trade = useTrade();
  const format = useFormat();
  const go = useGo();
  const { data } = useSuspenseQuery(proceduresQuery);
  const reason = reasonAgainst(data.actions, 'procedure-drafted');
  const approved = data.rows.filter((row) => row.state === 'approved').length;
  const drafting = (
    <Button kind="primary" disabledReason={reason} onClick={() => go(addresses.procedure('new'))}>
      {text('draft-procedure')}
    </Button>
  );
  return (
    <>
      <PageHeader
        title={text('procedures')}
        sub={text('procedures-sub', { count: approved, shown: format.count(approved) })}
        actions={
          <>
            <Button onClick={() => go(addresses.data())}>{text('data')}</Button>
            {drafting}
          </>
        }
      />
      {data.rows.length === 0 ? (
        <EmptyState title={text('no-procedure')} actions={drafting}>
          <p>{text('no-procedure-detail')}</p>
        </EmptyState>
      ) : (
        <Table
          caption={text('procedures')}
          captionHidden
          rows={data.rows}
          rowKey={(row) => `${row.procedureId} ${row.revision}`}
          columns={[
            {
              key: 'code',
              header: text('code'),
              rowHeader: true,
              cell: (row: Row) => (
                <Link href={addresses.procedure(row.procedureId, { revision: row.revision })}>
                  {text('revision-of', { code: row.code, revision: row.revision })}
                </Link>
              ),
            },
            { key: 'title', header: text('procedure-title'), cell: (row) => row.title },
            { key: 'pattern', header: text('pattern'), cell: (row) => trade.word('pattern', row.content.pattern) },
            { key: 'method', header: text('method'), cell: (row) => trade.word('method', row.content.method) },
            {
              key: 'bolts',
              header: text('bolts'),
              cell: (row) =>
                text('bolts-between', {
                  least: format.count(row.content.appliesTo.leastBolts),
                  most: format.count(row.content.appliesTo.mostBolts),
                }),
            },
            {
              key: 'state',
              header: text('state'),
              cell: (row) =>
                row.state === 'approved' && row.approvedAt
                  ? text('approved-by', {
                      who: row.approvedBy?.name ?? '',
                      at: format.day(row.approvedAt),
                    })
                  : text(`state-${row.state}`),
            },
          ]}
        />
      )}
    </>
  );
}
