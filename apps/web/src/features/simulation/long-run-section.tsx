import type { LongSimulation } from '@seatwell/calc';
import { useMutation } from '@tanstack/react-query';
import { request } from '../../app/api-client.ts';
import { ErrorNotice } from '../../app/error-notice.tsx';
import { type ServerJob, useServerJob, whyFailed } from '../../app/use-server-job.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { Button } from '../../ui/button.tsx';
import { Notice } from '../../ui/notice.tsx';
import { NumberField } from '../../ui/number-field.tsx';
import { ProgressBar } from '../../ui/progress-bar.tsx';
import type { ComputedAnswer } from './computed-answer.ts';
import { longRunOf, USUAL_RUNS } from './long-run.ts';
import { LongRunTable } from './long-run-table.tsx';
import type { SimulationJob } from './run-simulation.ts';
import styles from './simulation.module.css';

interface Props {
  readonly job: SimulationJob;
  readonly boltCount: number;
  readonly computed: ComputedAnswer | undefined;
  /** scattered runs of each way, as entered */
  readonly runs: number | undefined;
  readonly onRuns: (runs: number | undefined) => void;
  /** the run of these inputs, where one was started */
  readonly jobId: string | undefined;
  readonly onStarted: (jobId: string) => void;
}

/** Every pattern of the flange with many scattered runs: more than the device computes, so the server does. */
export function LongRunSection({ job, boltCount, computed, runs, onRuns, jobId, onStarted }: Props) {
  const text = useText('simulation');
  const format = useFormat();
  const scatterRuns = runs ?? USUAL_RUNS;
  const { body, total, mostRuns } = longRunOf(job, boltCount, computed, scatterRuns);
  const start = useMutation({
    mutationFn: () => request<{ jobId: string }>('/calc/simulation/runs', { method: 'POST', body }),
    onSuccess: ({ jobId: started }) => onStarted(started),
  });
  const running = useServerJob<LongSimulation>(jobId);
  const { data } = running;
  const busy = start.isPending || data?.state === 'waiting' || data?.state === 'running';
  let missing: string | undefined;
  if ((job.scatter_percent ?? 0) === 0) missing = text('long-needs-scatter');
  else if (!Number.isInteger(scatterRuns) || scatterRuns < 1 || scatterRuns > mostRuns)
    missing = text('long-most', { most: format.count(mostRuns) });
  return (
    <section className={styles.section}>
      <h2>{text('long-run')}</h2>
      <p className={styles.soft}>{text('long-what')}</p>
      <form className={styles.longRun} onSubmit={(event) => event.preventDefault()} aria-label={text('long-run')}>
        <NumberField
          label={text('long-runs')}
          hint={text('long-runs-hint', { usual: format.count(USUAL_RUNS) })}
          optional
          value={runs}
          onChange={onRuns}
        />
        <Button busy={busy} disabledReason={missing} onClick={() => start.mutate(undefined)}>
          {text('long-start', { total: format.count(total) })}
        </Button>
      </form>
      <ErrorNotice error={start.error} />
      <ErrorNotice error={running.error} />
      {data !== undefined && <Progress job={data} />}
      {data?.state === 'done' && <LongRunTable result={data.result} boltCount={boltCount} />}
    </section>
  );
}

function Progress({ job }: { readonly job: ServerJob<LongSimulation> }) {
  const text = useText('simulation');
  const format = useFormat();
  if (job.state === 'done') return <p role="status">{text('long-done', { total: format.count(job.total) })}</p>;
  if (job.state === 'failed')
    return (
      <Notice kind="stop" title={text('failed')} live>
        <p>{whyFailed(job)}</p>
      </Notice>
    );
  return (
    <>
      <ProgressBar
        label={text('long-running')}
        valueText={text('long-of', { done: format.count(job.done), total: format.count(job.total) })}
        done={job.done}
        total={job.total}
      />
      <p className={styles.soft}>{text('long-leave')}</p>
    </>
  );
}
