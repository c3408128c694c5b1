import { LANGUAGES, type Language } from '@seatwell/contract';
import { useMutation } from '@tanstack/react-query';
import { useState } from 'react';
import { request } from '../../app/api-client.ts';
import { ErrorNotice } from '../../app/error-notice.tsx';
import { useServerJob, whyFailed } from '../../app/use-server-job.ts';
import { useShutdownId } from '../../app/use-shutdown.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { Button } from '../../ui/button.tsx';
import { Dialog } from '../../ui/dialog.tsx';
import { Link } from '../../ui/link.tsx';
import { Notice } from '../../ui/notice.tsx';
import { ProgressBar } from '../../ui/progress-bar.tsx';
import { RadioCards } from '../../ui/radio-cards.tsx';
import { Select } from '../../ui/select.tsx';
import { LabelFields } from './label-fields.tsx';
import { completeSizes, LABEL_SHEETS, type LabelSheet, noSizes } from './label-sizes.ts';
import styles from './register.module.css';
import type { SelectedJoint } from './selection.ts';

/** The file of sheets, as the job answers it. */
interface SheetsFile {
  readonly hash: string;
  readonly size: number;
  readonly pages: number;
  readonly sheets: number;
  readonly firstTag: string;
  readonly lastTag: string;
}

// The server prints no more at once.
const mostSheets = 2000;

const papers = ['sheet', 'tag', 'record-form'] as const;
type Paper = (typeof papers)[number];

/** Prints sheets, tags or record forms of the ticked joints, in their order, into one file to open or print. */
export function PrintDialog({ joints, onClose }: { joints: readonly SelectedJoint[]; onClose: () => void }) {
  const text = useText('register');
  const format = useFormat();
  const shutdownId = useShutdownId();
  const [paper, setPaper] = useState<Paper>('sheet');
  const [language, setLanguage] = useState<Language | 'own'>('own');
  const [sheet, setSheet] = useState<LabelSheet>('cards');
  const [typed, setTyped] = useState(noSizes);
  const [first, setFirst] = useState<number | undefined>(1);
  const sizes = sheet === 'own' ? completeSizes(typed) : LABEL_SHEETS[sheet];
  const print = useMutation({
    mutationFn: () =>
      request<{ jobId: string }>(`/shutdowns/${shutdownId}/sheets`, {
        method: 'POST',
        body: {
          jointIds: joints.map((joint) => joint.jointId),
          paper,
          ...(language === 'own' ? {} : { language }),
          ...(paper === 'tag' ? { geometry: { ...sizes, first } } : {}),
        },
      }),
  });
  const count = { count: joints.length, shown: format.count(joints.length) };
  let missing = joints.length > mostSheets ? text('print-too-many', { most: format.count(mostSheets) }) : undefined;
  if (paper === 'tag' && (!sizes || first === undefined)) missing = text('label-missing');
  const languageName = (code: string) => new Intl.DisplayNames([code], { type: 'language' }).of(code) ?? code;
  return (
    <Dialog
      open
      onOpenChange={(open) => open || onClose()}
      title={text('print-title', count)}
      description={text('print-detail')}
      actions={
        print.data ? (
          <Button kind="primary" onClick={onClose}>
            {text('close')}
          </Button>
        ) : (
          <>
            <Button onClick={onClose}>{text('cancel')}</Button>
            <Button
              kind="primary"
              busy={print.isPending}
              disabledReason={missing}
              onClick={() => print.mutate(undefined)}
            >
              {text('print')}
            </Button>
          </>
        )
      }
    >
      <ErrorNotice error={print.error} />
      {print.data ? (
        <Printing jobId={print.data.jobId} />
      ) : (
        <>
          <RadioCards
            label={text('print-what')}
            value={paper}
            options={papers.map((value) => ({
              value,
              label: text(`paper-${value}`),
              detail: text(`paper-${value}-detail`),
            }))}
            onChange={setPaper}
          />
          {paper === 'tag' && (
            <LabelFields
              sheet={sheet}
              onSheet={setSheet}
              typed={typed}
              onTyped={setTyped}
              first={first}
              onFirst={setFirst}
            />
          )}
          <Select
            label={text('print-language')}
            value={language}
            options={[
              { value: 'own' as const, label: text('language-own') },
              ...LANGUAGES.map((value) => ({ value, label: languageName(value) })),
            ]}
            onChange={setLanguage}
          />
        </>
      )}
    </Dialog>
  );
}

function Printing({ jobId }: { jobId: string }) {
  const text = useText('register');
  const format = useFormat();
  const { data: job, error } = useServerJob<{ file: SheetsFile }>(jobId);
  if (error) return <ErrorNotice error={error} />;
  if (job?.state === 'failed') {
    return (
      <Notice kind="stop" title={text('print-failed')} live>
        <p>{whyFailed(job)}</p>
      </Notice>
    );
  }
  if (job?.state === 'done') return <PrintedFile file={job.result.file} />;
  return (
    <ProgressBar
      label={text('printing')}
      valueText={text('print-running', { done: format.count(job?.done ?? 0), total: format.count(job?.total ?? 0) })}
      done={job?.done ?? 0}
      total={job?.total ?? 0}
    />
  );
}

function PrintedFile({ file }: { file: SheetsFile }) {
  const text = useText('register');
  const format = useFormat();
  return (
    <p role="status">
      <Link href={`/api/v1/files/${file.hash}`} target="_blank">
        {file.sheets === 1
          ? text('print-file-one', { tag: file.firstTag })
          : text('print-file', { first: file.firstTag, last: file.lastTag })}
      </Link>{' '}
      <span className={styles.soft}>
        {text('print-file-facts', {
          count: file.sheets,
          shown: format.count(file.sheets),
          pages: format.count(file.pages),
          size: format.bytes(file.size),
        })}
      </span>
    </p>
  );
}
