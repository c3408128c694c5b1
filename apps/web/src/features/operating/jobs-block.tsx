import type { OperatorJob, OperatorStatus } from '@seatwell/contract';
import { ErrorNotice } from '../../app/error-notice.tsx';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { Button } from '../../ui/button.tsx';
import { Table } from '../../ui/table.tsx';
import styles from './operating.module.css';
import { useOperatorAction } from './use-operator-action.ts';

const NAMED = ['import-register', 'print-sheets', 'read-import', 'record-list', 'simulate-tightening'] as const;

/** Jobs that failed or wait, then the latest that are done. */
export function JobsBlock({ jobs }: { jobs: OperatorStatus['jobs'] }) {
  const text = useText('operating');
  const format = useFormat();
  const act = useOperatorAction();
  const named = (kind: string) => {
    const known = NAMED.find((each) => each === kind);
    return known ? text(`job-${known}`) : kind;
  };
  const state = (job: OperatorJob) =>
    job.state === 'running'
      ? text('state-running', { done: format.count(job.done), total: format.count(job.total) })
      : text(`state-${job.state}`);
  if (jobs.recent.length === 0)
    return (
      <section className={styles.block}>
        <h2>{text('jobs')}</h2>
        <p>{text('jobs-none')}</p>
      </section>
    );
  return (
    <section className={styles.block}>
      <ErrorNotice error={act.error} />
      <Table
        caption={text('jobs')}
        rows={jobs.recent}
        rowKey={(job) => job.jobId}
        columns={[
          { key: 'kind', header: text('job'), rowHeader: true, cell: (job) => named(job.kind) },
          { key: 'state', header: text('state'), cell: state },
          {
            key: 'problem',
            header: text('problem'),
            cell: (job) => <span className={styles.long}>{job.problem}</span>,
          },
          { key: 'by', header: text('started-by'), cell: (job) => job.startedBy.name ?? text('name-erased') },
          { key: 'at', header: text('started'), cell: (job) => format.dayTime(job.createdAt) },
          {
            key: 'retry',
            header: text('action'),
            cell: (job) =>
              job.state === 'failed' && (
                <Button
                  kind="quiet"
                  label={text('retry-of', { job: named(job.kind) })}
                  busy={act.isPending && act.variables.path.includes(job.jobId)}
                  onClick={() => act.mutate({ path: `/jobs/${job.jobId}/retry` })}
                >
                  {text('retry')}
                </Button>
              ),
          },
        ]}
      />
    </section>
  );
}
