import type { OperatorStatus } from '@seatwell/contract';
import { useSuspenseQuery } from '@tanstack/react-query';
import { operatorStatusQuery } from '../../app/reads.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { KeyValues } from '../../ui/key-values.tsx';
import { Notice } from '../../ui/notice.tsx';
import { PageHeader } from '../../ui/page-header.tsx';
import { type Attention, attentionOf } from './attention.ts';
import { JobsBlock } from './jobs-block.tsx';
import styles from './operating.module.css';
import { PeopleKeptBlock } from './people-kept-block.tsx';
import { SignInBlock } from './sign-in-block.tsx';
import { SiteBlock } from './site-block.tsx';
import { StreamsBlock } from './streams-block.tsx';
import { UpkeepBlock } from './upkeep-block.tsx';

/** How the server does: what needs the administrator first, then all of it. */
export function OperatingPage() {
  const text = useText('operating');
  const format = useFormat();
  const { data: status } = useSuspenseQuery(operatorStatusQuery);
  const attention = attentionOf(status);
  return (
    <>
      <PageHeader
        title={
          attention.length === 0
            ? text('title-well')
            : text('attention', { count: attention.length, shown: format.count(attention.length) })
        }
        documentTitle={text('title')}
      />
      <div className={styles.blocks}>
        {attention.map((each, index) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: the order is fixed, and two warnings may say the same
          <AttentionNotice key={index} attention={each} />
        ))}
        <Facts status={status} />
        <UpkeepBlock runs={status.upkeep} />
        <StreamsBlock streams={status.streams} signing={status.signing} />
        <JobsBlock jobs={status.jobs} />
        <SignInBlock signIn={status.signIn} />
        <SiteBlock />
        <PeopleKeptBlock retention={status.retention} leavers={status.leavers} />
      </div>
    </>
  );
}

function AttentionNotice({ attention }: { attention: Attention }) {
  const text = useText('operating');
  const format = useFormat();
  switch (attention.what) {
    case 'warning':
    case 'unsigned':
      return (
        <Notice kind="attention" title={text(attention.what)}>
          <p>{attention.detail}</p>
        </Notice>
      );
    case 'backup-missing':
    case 'verification-missing':
      return (
        <Notice kind="attention" title={text(attention.what)}>
          <p>{text(`${attention.what}-detail`)}</p>
        </Notice>
      );
    case 'backup-old':
    case 'verification-old':
      return <Notice kind="attention" title={text(attention.what, { age: format.duration(attention.minutes) })} />;
    case 'failed-jobs':
    case 'locked-shown':
      return (
        <Notice
          kind="attention"
          title={text(attention.what, { count: attention.count, shown: format.count(attention.count) })}
        />
      );
    case 'backup-failed':
      return <Found title={text('backup-failed')} findings={attention.run.findings} />;
    case 'verification-failed': {
      const problems = attention.run.problems ?? 0;
      const title = text('verification-failed', { count: problems, shown: format.count(problems) });
      return <Found title={title} findings={attention.run.findings} />;
    }
  }
}

function Found({ title, findings }: { title: string; findings: readonly string[] }) {
  return (
    <Notice kind="stop" title={title}>
      <ul>
        {findings.slice(0, 5).map((finding) => (
          <li key={finding}>{finding}</li>
        ))}
      </ul>
    </Notice>
  );
}

function Facts({ status }: { status: OperatorStatus }) {
  const text = useText('operating');
  const format = useFormat();
  const { database } = status;
  const { busy, idle, waiting } = database.connections;
  return (
    <KeyValues
      items={[
        { name: text('version'), value: status.version },
        { name: text('running-since'), value: format.dayTime(status.processStartedAt) },
        { name: text('database'), value: `PostgreSQL ${database.version}` },
        { name: text('size'), value: format.bytes(database.size_bytes) },
        {
          name: text('connections'),
          value: text('connections-shown', {
            busy: format.count(busy),
            idle: format.count(idle),
            waiting: format.count(waiting),
          }),
        },
        { name: text('database-role'), value: database.role },
        {
          name: text('last-migration'),
          value: text('migrations', { count: format.count(database.migrations), name: database.lastMigration }),
        },
      ]}
    />
  );
}
