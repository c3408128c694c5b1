import { useSuspenseQuery } from '@tanstack/react-query';
import { useSearch } from '@tanstack/react-router';
import { useState } from 'react';
import { addresses } from '../../app/addresses.ts';
import { crewsQuery, proceduresQuery } from '../../app/reads.ts';
import { newId } from '../../app/send-command.ts';
import { useMe } from '../../app/session.ts';
import { useGo } from '../../app/use-go.ts';
import { useReasonAgainst } from '../../app/use-reason-against.ts';
import { useShutdownId } from '../../app/use-shutdown.ts';
import { useFactCommand } from '../../offline/use-fact-command.ts';
import { useText } from '../../texts/text-provider.tsx';
import { Button } from '../../ui/button.tsx';
import { Checkbox } from '../../ui/checkbox.tsx';
import { Link } from '../../ui/link.tsx';
import { Notice } from '../../ui/notice.tsx';
import { PageHeader } from '../../ui/page-header.tsx';
import { Select } from '../../ui/select.tsx';
import { StickyActionBar } from '../../ui/sticky-action-bar.tsx';
import { useAnnouncer } from '../../ui/toast.tsx';
import { FactProblem } from './fact-problem.tsx';
import styles from './work.module.css';

/** The pre-job talk on one procedure revision: what is told, and who attended. */
export function TalkPage() {
  const reasonAgainst = useReasonAgainst();
  const text = useText('talk');
  const go = useGo();
  const me = useMe();
  const { toast } = useAnnouncer();
  const waits = useText('offline');
  const shutdownId = useShutdownId();
  const asked = (useSearch({ strict: false }) as { procedure?: string }).procedure;
  const { data: procedures } = useSuspenseQuery(proceduresQuery);
  const { data: crews } = useSuspenseQuery(crewsQuery(shutdownId));
  const offered = procedures.rows.filter((row) => row.state === 'approved');
  const own = crews.rows.filter((crew) => crew.persons.some((person) => person.personId === me.personId));
  const [key, setKey] = useState(offered.find((row) => row.procedureId === asked)?.contentHash ?? '');
  const [crewId, setCrewId] = useState(own.length === 1 ? (own[0]?.crewId ?? '') : '');
  const [attended, setAttended] = useState<ReadonlySet<string>>(new Set());
  const [talkId] = useState(newId);
  const command = useFactCommand('talk-held');
  const procedure = offered.find((row) => row.contentHash === key);
  const crew = crews.rows.find((each) => each.crewId === crewId);
  const persons = crew?.persons ?? [];
  const chosen = persons.filter((person) => attended.has(person.personId));

  let missing = reasonAgainst(crews.actions, 'talk-held');
  if (missing === undefined && !procedure) missing = text('missing-procedure');
  else if (missing === undefined && !crew) missing = text('missing-crew');
  else if (missing === undefined && chosen.length === 0) missing = text('missing-attendance');

  const record = () =>
    procedure &&
    command.mutate(
      {
        subjectId: talkId,
        label: procedure.code,
        payload: {
          talkId,
          procedureId: procedure.procedureId,
          revision: procedure.revision,
          crewId: crewId || null,
          heldBy: me.personId,
          attendees: chosen.map((person) => ({
            personId: person.personId,
            signedBy: person.personId === me.personId ? 'account' : 'drawn-signature',
          })),
        },
      },
      {
        onSuccess: ({ disposition }) => {
          toast({ message: disposition === 'waiting' ? waits('kept-here') : text('recorded') });
          go(addresses.myJoints(shutdownId));
        },
      },
    );
  return (
    <div className={styles.page}>
      <PageHeader
        title={text('title')}
        over={<Link href={addresses.myJoints(shutdownId)}>{text('to-my-joints')}</Link>}
        sub={text('sub')}
      />
      <Select
        label={text('procedure')}
        value={key}
        options={offered.map((row) => ({
          value: row.contentHash,
          label: text('procedure-revision', { code: row.code, revision: row.revision }),
          detail: row.title,
        }))}
        onChange={setKey}
      />
      {procedure && (
        <Notice title={text('to-be-told')}>
          <ul className={styles.cautions}>
            {procedure.content.cautions.map((caution) => (
              <li key={caution}>{caution}</li>
            ))}
            {(['isolation', 'fire-line', 'hydraulics', 'fingers', 'gas-tests', 'stop'] as const).map((caution) => (
              <li key={caution}>{text(`caution-${caution}`)}</li>
            ))}
          </ul>
        </Notice>
      )}
      <Select
        label={text('crew')}
        value={crewId}
        options={crews.rows.map((each) => ({ value: each.crewId, label: each.code, detail: each.company }))}
        onChange={(chosenCrew) => {
          setCrewId(chosenCrew);
          setAttended(new Set());
        }}
      />
      {crew && (
        <fieldset className={styles.group}>
          <legend className={styles.legend}>{text('who-attended')}</legend>
          <p className={styles.soft}>{text('drawn-note')}</p>
          {persons.map((person) => (
            <Checkbox
              key={person.personId}
              label={person.name ?? text('name-erased')}
              checked={attended.has(person.personId)}
              onChange={(on) => {
                const next = new Set(attended);
                if (on) next.add(person.personId);
                else next.delete(person.personId);
                setAttended(next);
              }}
            />
          ))}
        </fieldset>
      )}
      <FactProblem error={command.error} />
      <StickyActionBar
        actions={
          <Button kind="primary" size="large" wide busy={command.isPending} disabledReason={missing} onClick={record}>
            {text('record')}
          </Button>
        }
      />
    </div>
  );
}
