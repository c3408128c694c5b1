import type { ImportPreview } from '@seatwell/contract';
import { useQueryClient } from '@tanstack/react-query';
import { useEffect, useState } from 'react';
import { ErrorNotice } from '../../app/error-notice.tsx';
import { useShutdownId } from '../../app/use-shutdown.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { Button } from '../../ui/button.tsx';
import { Checkbox } from '../../ui/checkbox.tsx';
import { Problem } from '../../ui/problem.tsx';
import { ProgressBar } from '../../ui/progress-bar.tsx';
import { StickyActionBar } from '../../ui/sticky-action-bar.tsx';
import styles from './import.module.css';
import { importQuery } from './import-query.ts';
import { ReadingProgress } from './reading-progress.tsx';
import { useConfirm, useImportJob } from './use-import.ts';
import type { Reading } from './use-reading.ts';

interface ConfirmBarProps {
  readonly preview: ImportPreview;
  /** why the file has to be read with the choices as they stand before anything can be recorded */
  readonly unread: 'choices-changed' | 'answers-filled' | null;
  readonly reading: Reading;
  readonly onReadAgain: () => void;
}

/** What can be done now: read the file with other choices, or record what the preview shows. */
export function ConfirmBar({ preview, unread, reading, onReadAgain }: ConfirmBarProps) {
  const text = useText('import');
  const format = useFormat();
  const shutdownId = useShutdownId();
  const queries = useQueryClient();
  const [leaveOut, setLeaveOut] = useState(false);
  const confirm = useConfirm(preview);
  const job = useImportJob(confirm.data?.jobId);
  const { counts } = preview;
  const count = counts.new + counts.changed;
  const running = confirm.data !== undefined && job.data?.state !== 'failed';
  const done = job.data?.state === 'done';
  useEffect(() => {
    if (done) void queries.invalidateQueries({ queryKey: importQuery(shutdownId, preview.importId).queryKey });
  }, [done, queries, shutdownId, preview.importId]);

  const failed =
    job.data?.state === 'failed' && job.data.result && 'problem' in job.data.result ? job.data.result.problem : null;
  const reason = () => {
    if (preview.stops.length > 0) return text('stopped');
    if (counts.error > 0 && !leaveOut) return text('leave-out-first', { count: counts.error });
    return undefined;
  };
  return (
    <>
      <ErrorNotice
        error={confirm.error}
        actions={
          <Button busy={reading.underWay} onClick={onReadAgain}>
            {text('read-again')}
          </Button>
        }
      />
      {failed && (
        <Problem
          problem={failed}
          actions={
            <Button busy={reading.underWay} onClick={onReadAgain}>
              {text('read-again')}
            </Button>
          }
        />
      )}
      <StickyActionBar
        actions={
          unread ? (
            <Button kind="primary" busy={reading.underWay} onClick={onReadAgain}>
              {text('read-again')}
            </Button>
          ) : (
            <Button
              kind="primary"
              busy={confirm.isPending || running || reading.underWay}
              disabledReason={reason()}
              onClick={() => confirm.mutate(leaveOut)}
            >
              {text('confirm', { count, rows: format.count(count) })}
            </Button>
          )
        }
      >
        {reading.underWay ? (
          <ReadingProgress reading={reading} fileName={preview.fileName} />
        ) : running && job.data ? (
          <ProgressBar
            label={text('importing')}
            valueText={text('progress', { done: format.count(job.data.done), total: format.count(job.data.total) })}
            done={job.data.done}
            total={job.data.total}
          />
        ) : (
          <BarWords unread={unread} preview={preview} leaveOut={leaveOut} onLeaveOut={setLeaveOut} />
        )}
      </StickyActionBar>
    </>
  );
}

function BarWords(props: {
  unread: ConfirmBarProps['unread'];
  preview: ImportPreview;
  leaveOut: boolean;
  onLeaveOut: (on: boolean) => void;
}) {
  const text = useText('import');
  const { unread, preview } = props;
  if (unread) return <span className={styles.soft}>{text(unread)}</span>;
  if (preview.counts.error === 0) return <span className={styles.soft}>{text('all-or-nothing')}</span>;
  return (
    <Checkbox
      label={text('leave-out', { count: preview.counts.error })}
      checked={props.leaveOut}
      onChange={props.onLeaveOut}
    />
  );
}
