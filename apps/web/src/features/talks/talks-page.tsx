import { useSuspenseQuery } from '@tanstack/react-query';
import { addresses } from '../../app/addresses.ts';
import { talksQuery } from '../../app/reads.ts';
import { useGo } from '../../app/use-go.ts';
import { useReasonAgainst } from '../../app/use-reason-against.ts';
import { useShutdownId } from '../../app/use-shutdown.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { Button } from '../../ui/button.tsx';
import { Link } from '../../ui/link.tsx';
import { PageHeader } from '../../ui/page-header.tsx';
import { Table } from '../../ui/table.tsx';
import { PeopleWays } from '../people/people-ways.tsx';
import { fieldAddresses } from '../work/addresses.ts';

/** Pre-job talks: who was told about which revision of a procedure, and by whom. */
export function TalksPage() {
  const reasonAgainst = useReasonAgainst();
  const text = useText('talks');
  const format = useFormat();
  const shutdownId = useShutdownId();
  const { data } = useSuspenseQuery(talksQuery(shutdownId));
  const go = useGo();
  return (
    <>
      <PageHeader
        over={<PeopleWays />}
        title={text('title', { count: data.rows.length, shown: format.count(data.rows.length) })}
        documentTitle={text('talks')}
        sub={text('sub')}
        actions={
          <Button
            kind="primary"
            disabledReason={reasonAgainst(data.actions, 'talk-held')}
            onClick={() => go(fieldAddresses.talk(shutdownId))}
          >
            {text('record')}
          </Button>
        }
      />
      <Table
        caption={text('talks')}
        captionHidden
        rows={data.rows}
        rowKey={(row) => row.talkId}
        empty={text('none')}
        columns={[
          { key: 'at', header: text('held-at'), rowHeader: true, cell: (row) => format.dayTime(row.heldAt) },
          {
            key: 'procedure',
            header: text('procedure'),
            cell: (row) => (
              <Link href={addresses.procedure(row.procedureId)}>
                {text('procedure-revision', { code: row.code, revision: format.count(row.revision), title: row.title })}
              </Link>
            ),
          },
          { key: 'crew', header: text('crew'), cell: (row) => row.crew?.code },
          { key: 'by', header: text('held-by'), cell: (row) => row.heldBy.name ?? text('name-erased') },
          {
            key: 'attendees',
            header: text('attendees'),
            cell: (row) =>
              text('attended', {
                count: row.attendees.length,
                shown: format.count(row.attendees.length),
                names: row.attendees.map((person) => person.name ?? text('name-erased')).join(', '),
              }),
          },
        ]}
      />
    </>
  );
}
