import type { BatchAnswer } from '@seatwell/contract';
import { useQueryClient } from '@tanstack/react-query';
import { useEffect } from 'react';
import { ErrorNotice } from '../../app/error-notice.tsx';
import { shutdownKey } from '../../app/query-client.ts';
import { type ServerJob, useServerJob, whyFailed } from '../../app/use-server-job.ts';
import { useShutdownId } from '../../app/use-shutdown.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { Notice } from '../../ui/notice.tsx';
import { ProgressBar } from '../../ui/progress-bar.tsx';
import styles from './register.module.css';

/** What became of a list: how many joints were recorded, and each refused one with its reasons. */
export function ListResult({ answer }: { answer: BatchAnswer }) {
  const shutdownId = useShutdownId();
  const queries = useQueryClient();
  const job = useServerJob<BatchAnswer>(answer.jobId);
  const ended = job.data?.state === 'done';
  useEffect(() => {
    if (ended) void queries.invalidateQueries({ queryKey: shutdownKey(shutdownId) });
  }, [ended, queries, shutdownId]);

  if (answer.jobId === null) return <Recorded answer={answer} />;
  if (job.error) return <ErrorNotice error={job.error} />;
  return job.data ? <JobState job={job.data} /> : null;
}

function JobState({ job }: { job: ServerJob<BatchAnswer> }) {
  const text = useText('register');
  const format = useFormat();
  if (job.state === 'done') return <Recorded answer={job.result} />;
  if (job.state === 'failed') {
    return (
      <Notice kind="stop" title={text('job-failed')} live>
        <p>{whyFailed(job)}</p>
      </Notice>
    );
  }
  return (
    <ProgressBar
      label={text('job-recording')}
      valueText={text('job-running', { done: format.count(job.done), total: format.count(job.total) })}
      done={job.done}
      total={job.total}
    />
  );
}

function Recorded({ answer }: { answer: BatchAnswer }) {
  const text = useText('register');
  const format = useFormat();
  const figure = (count: number) => ({ count, shown: format.count(count) });
  return (
    <>
      <p role="status">
        <strong>{text('recorded', figure(answer.recorded))}</strong>
      </p>
      {answer.refused.length > 0 && (
        <Notice kind="attention" title={text('refused', figure(answer.refused.length))}>
          <ul className={styles.refused}>
            {answer.refused.map((refused) => (
              <li key={refused.jointId}>
                <strong>{refused.joint}</strong>
                <ul>
                  {refused.failed.map((rule) => (
                    <li key={rule.rule}>{[rule.message, rule.detail, rule.remedy].filter(Boolean).join(' ')}</li>
                  ))}
                </ul>
              </li>
            ))}
          </ul>
        </Notice>
      )}
    </>
  );
}
