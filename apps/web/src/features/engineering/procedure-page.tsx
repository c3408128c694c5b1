import { useQuery, useSuspenseQuery } from '@tanstack/react-query';
import { useParams, useSearch } from '@tanstack/react-router';
import { useState } from 'react';
import { addresses } from '../../app/addresses.ts';
import { ErrorNotice } from '../../app/error-notice.tsx';
import { lubricantsQuery, proceduresQuery } from '../../app/reads.ts';
import { textOf } from '../../app/search-params.ts';
import { newId } from '../../app/send-command.ts';
import { useSiteCommand } from '../../app/use-command.ts';
import { useGo } from '../../app/use-go.ts';
import { useReasonAgainst } from '../../app/use-reason-against.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { Button } from '../../ui/button.tsx';
import { Link } from '../../ui/link.tsx';
import { PageHeader } from '../../ui/page-header.tsx';
import { StickyActionBar } from '../../ui/sticky-action-bar.tsx';
import { TextField } from '../../ui/text-field.tsx';
import { DecisionDialog } from '../joint/decision-dialog.tsx';
import styles from './engineering.module.css';
import { procedureMissing, startingContent } from './procedure-draft.ts';
import { ProcedureFields } from './procedure-fields.tsx';
import { SequencePreview } from './sequence-preview.tsx';

/** One revision of a procedure: drafted, approved under a signature, superseded; a revision in use is never edited. */
export function ProcedurePage() {
  const { procedureId = 'new' } = useParams({ strict: false });
  const search = useSearch({ strict: false }) as Record<string, unknown>;
  // Another revision is another form: nothing typed into one may reach the other.
  return <Revision key={`${procedureId} ${textOf(search.revision)}`} asked={textOf(search.revision)} />;
}

function Revision({ asked }: { asked: string | undefined }) {
  const reasonAgainst = useReasonAgainst();
  const text = useText('engineering');
  const format = useFormat();
  const go = useGo();
  const { procedureId = 'new' } = useParams({ strict: false });
  const { data } = useSuspenseQuery(proceduresQuery);
  const lubricants = useQuery(lubricantsQuery);
  const revisions = data.rows.filter((row) => row.procedureId === procedureId);
  const shown = revisions.find((row) => String(row.revision) === asked) ?? revisions[0];
  const newest = Math.max(0, ...revisions.map((row) => row.revision));
  const [id] = useState(() => (procedureId === 'new' ? newId() : procedureId));
  const [code, setCode] = useState(shown?.code ?? '');
  const [title, setTitle] = useState(shown?.title ?? '');
  const [content, setContent] = useState(shown?.content ?? startingContent);
  const [deciding, setDeciding] = useState<'approve' | 'supersede' | null>(null);
  const draft = useSiteCommand('procedure-drafted');
  const approve = useSiteCommand('procedure-approved');
  const supersede = useSiteCommand('procedure-superseded');
  const lacking = procedureMissing(code, title, content);
  const next = newest + 1;
  const unchanged =
    shown !== undefined &&
    shown.code === code &&
    shown.title === title &&
    JSON.stringify(shown.content) === JSON.stringify(content);
  const reason =
    reasonAgainst(data.actions, 'procedure-drafted') ??
    (unchanged ? text('unchanged') : lacking ? text(lacking) : undefined);
  const save = () =>
    draft.mutate(
      { subjectId: id, payload: { procedureId: id, revision: next, code: code.trim(), title: title.trim(), content } },
      { onSuccess: () => go(addresses.procedure(id, { revision: next }), { replace: true }) },
    );
  return (
    <>
      <PageHeader
        title={shown ? text('revision-of', { code: shown.code, revision: shown.revision }) : text('draft-procedure')}
        over={<Link href={addresses.procedures()}>{text('procedures')}</Link>}
        sub={
          shown &&
          [
            text(`state-${shown.state}`),
            shown.approvedAt
              ? text('approved-by', { who: shown.approvedBy?.name ?? '', at: format.day(shown.approvedAt) })
              : '',
          ]
            .filter(Boolean)
            .join(' · ')
        }
        actions={
          shown && (
            <>
              <Button onClick={() => window.open(addresses.handOut(procedureId, shown.revision), '_blank', 'noopener')}>
                {text('print-hand-out')}
              </Button>
              {shown.state === 'draft' && (
                <Button
                  kind="primary"
                  disabledReason={reasonAgainst(shown.actions, 'procedure-approved')}
                  onClick={() => setDeciding('approve')}
                >
                  {text('approve-procedure')}
                </Button>
              )}
              {shown.state === 'approved' && (
                <Button
                  disabledReason={reasonAgainst(shown.actions, 'procedure-superseded')}
                  onClick={() => setDeciding('supersede')}
                >
                  {text('supersede')}
                </Button>
              )}
            </>
          )
        }
      />
      {revisions.length > 1 && (
        <p className={styles.actions}>
          {revisions.map((row) => (
            <Link key={row.revision} href={addresses.procedure(procedureId, { revision: row.revision })}>
              {text('revision-state', { revision: row.revision, state: text(`state-${row.state}`) })}
            </Link>
          ))}
        </p>
      )}
      <div className={styles.two}>
        <div className={styles.form}>
          <TextField label={text('code')} value={code} onChange={setCode} />
          <TextField label={text('procedure-title')} value={title} onChange={setTitle} />
          <ErrorNotice error={lubricants.error} />
          <ProcedureFields value={content} onChange={setContent} lubricants={lubricants.data?.rows ?? []} />
          <ErrorNotice error={draft.error} />
        </div>
        <SequencePreview content={content} />
      </div>
      <StickyActionBar
        actions={
          <Button kind="primary" busy={draft.isPending} disabledReason={reason} onClick={save}>
            {text('save-revision', { revision: next })}
          </Button>
        }
      >
        {shown && <span>{text('never-edited')}</span>}
      </StickyActionBar>
      {deciding === 'approve' && shown && (
        <DecisionDialog
          title={text('approve-procedure')}
          meaning={text('approve-procedure-meaning', {
            code: shown.code,
            revision: shown.revision,
            title: shown.title,
          })}
          roles={['engineer']}
          sendLabel={text('sign')}
          missing={unchanged ? undefined : text('save-first')}
          busy={approve.isPending}
          error={approve.error}
          onClose={() => setDeciding(null)}
          onSend={({ signature }) =>
            approve.mutate(
              { subjectId: shown.procedureId, signature, payload: { revision: shown.revision } },
              { onSuccess: () => setDeciding(null) },
            )
          }
        />
      )}
      {deciding === 'supersede' && shown && (
        <DecisionDialog
          danger
          title={text('supersede')}
          description={text('supersede-detail')}
          reasonLabel={text('reason')}
          sendLabel={text('supersede')}
          busy={supersede.isPending}
          error={supersede.error}
          onClose={() => setDeciding(null)}
          onSend={({ reason: why }) =>
            supersede.mutate(
              { subjectId: shown.procedureId, payload: { revision: shown.revision, reason: why } },
              { onSuccess: () => setDeciding(null) },
            )
          }
        />
      )}
    </>
  );
}
