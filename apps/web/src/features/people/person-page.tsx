import type { PersonPage as PersonAnswer, QualificationRow } from '@seatwell/contract';
import { useSuspenseQuery } from '@tanstack/react-query';
import { useParams } from '@tanstack/react-router';
import { useState } from 'react';
import { addresses } from '../../app/addresses.ts';
import { fileAddress } from '../../app/file-field.tsx';
import { personQuery } from '../../app/reads.ts';
import { useReasonAgainst } from '../../app/use-reason-against.ts';
import { useTrade } from '../../app/use-trade.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { Button } from '../../ui/button.tsx';
import { Link } from '../../ui/link.tsx';
import { PageHeader } from '../../ui/page-header.tsx';
import { Table } from '../../ui/table.tsx';
import styles from './people.module.css';
import { QualificationDialog } from './qualification-dialog.tsx';
import { ReasonDialog } from './reason-dialog.tsx';

type Asking =
  | { readonly what: 'record' }
  | { readonly what: 'withdraw'; readonly row: QualificationRow }
  | { readonly what: 'erase' };

/** One person: certificates with their dates, crews, talks attended. */
export function PersonPage() {
  const reasonAgainst = useReasonAgainst();
  const text = useText('people');
  const { personId = '' } = useParams({ strict: false });
  const { data: person } = useSuspenseQuery(personQuery(personId));
  const [asking, setAsking] = useState<Asking | null>(null);
  const close = () => setAsking(null);
  return (
    <>
      <PageHeader
        over={<Link href={addresses.people()}>{text('people')}</Link>}
        title={person.name ?? text('name-erased')}
        sub={[person.company, person.trade, person.badge && text('badge-of', { badge: person.badge })]
          .filter(Boolean)
          .join(' · ')}
        actions={
          <>
            <Button
              disabledReason={
                person.erasedAt === null ? reasonAgainst(person.actions, 'person-erased') : text('erased-already')
              }
              onClick={() => setAsking({ what: 'erase' })}
            >
              {text('erase')}
            </Button>
            <Button
              kind="primary"
              disabledReason={reasonAgainst(person.actions, 'qualification-recorded')}
              onClick={() => setAsking({ what: 'record' })}
            >
              {text('record-qualification')}
            </Button>
          </>
        }
      />
      <Qualifications person={person} onWithdraw={(row) => setAsking({ what: 'withdraw', row })} />
      <Table
        caption={text('crews')}
        rows={person.crews}
        rowKey={(row) => row.crewId}
        empty={text('no-crews')}
        columns={[
          { key: 'code', header: text('crew'), rowHeader: true, cell: (row) => row.code },
          { key: 'shutdown', header: text('shutdown'), cell: (row) => row.shutdown },
        ]}
      />
      <Talks person={person} />
      {asking?.what === 'record' && <QualificationDialog personId={personId} onClose={close} />}
      {asking?.what === 'withdraw' && (
        <ReasonDialog
          type="qualification-withdrawn"
          subjectId={asking.row.qualificationId}
          title={text('withdraw-title')}
          detail={text('withdraw-detail')}
          sendLabel={text('withdraw')}
          onClose={close}
        />
      )}
      {asking?.what === 'erase' && (
        <ReasonDialog
          type="person-erased"
          subjectId={personId}
          title={text('erase-title', { name: person.name ?? '' })}
          detail={text('erase-detail')}
          sendLabel={text('erase')}
          onClose={close}
        />
      )}
    </>
  );
}

function Qualifications({ person, onWithdraw }: { person: PersonAnswer; onWithdraw: (row: QualificationRow) => void }) {
  const reasonAgainst = useReasonAgainst();
  const text = useText('people');
  const trade = useTrade();
  const format = useFormat();
  const against = reasonAgainst(person.actions, 'qualification-withdrawn');
  return (
    <Table
      caption={text('qualifications')}
      rows={person.qualifications}
      rowKey={(row) => row.qualificationId}
      empty={text('no-qualifications')}
      columns={[
        {
          key: 'for',
          header: text('qualified-for'),
          rowHeader: true,
          cell: (row) => row.qualifiedFor.map((each) => trade.word('qualified', each)).join(', '),
        },
        { key: 'scheme', header: text('scheme'), cell: (row) => row.scheme },
        {
          key: 'valid',
          header: text('valid'),
          cell: (row) =>
            text('from-through', {
              from: format.datedDay(row.validFrom),
              through: format.datedDay(row.validThrough),
            }),
        },
        {
          key: 'state',
          header: text('state'),
          cell: (row) => (
            <span className={styles.state} data-state={row.state}>
              {text(`state-${row.state}`)}
            </span>
          ),
        },
        {
          key: 'certificate',
          header: text('certificate'),
          cell: (row) =>
            row.certificate !== null && (
              <a href={fileAddress(row.certificate)} target="_blank" rel="noreferrer">
                {text('open-certificate')}
              </a>
            ),
        },
        {
          key: 'withdraw',
          header: text('action'),
          cell: (row) =>
            row.state !== 'withdrawn' &&
            against === undefined && (
              <Button kind="quiet" label={text('withdraw-of', { scheme: row.scheme })} onClick={() => onWithdraw(row)}>
                {text('withdraw')}
              </Button>
            ),
        },
      ]}
    />
  );
}

function Talks({ person }: { person: PersonAnswer }) {
  const text = useText('people');
  const format = useFormat();
  return (
    <Table
      caption={text('talks-attended')}
      rows={person.talks}
      rowKey={(row) => row.talkId}
      empty={text('no-talks')}
      columns={[
        { key: 'at', header: text('held'), rowHeader: true, cell: (row) => format.dayTime(row.heldAt) },
        {
          key: 'procedure',
          header: text('procedure'),
          cell: (row) => text('procedure-revision', { code: row.code, revision: format.count(row.revision) }),
        },
      ]}
    />
  );
}
