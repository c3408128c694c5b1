import type { ImportChoices, ImportPreview, ImportState } from '@seatwell/contract';
import { useState } from 'react';
import { addresses } from '../../app/addresses.ts';
import { ErrorNotice } from '../../app/error-notice.tsx';
import { useShutdownId } from '../../app/use-shutdown.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { Figure, FigureRow } from '../../ui/figure.tsx';
import { Link } from '../../ui/link.tsx';
import { Notice } from '../../ui/notice.tsx';
import { PageHeader } from '../../ui/page-header.tsx';
import { ColumnsSection } from './columns-section.tsx';
import { ConfirmBar } from './confirm-bar.tsx';
import styles from './import.module.css';
import { NamedSection } from './named-section.tsx';
import { PreviewTabs } from './preview-tabs.tsx';
import { QuestionsSection } from './questions-section.tsx';
import { useImportSaid } from './use-import-said.ts';
import { useReading } from './use-reading.ts';

/** What sections are given to change the choices; the file is read again when the person says so. */
export interface ChoicesProps {
  readonly preview: ImportPreview;
  readonly choices: ImportChoices;
  readonly onChange: (choices: ImportChoices) => void;
}

/** The preview: what would become of the register, every cell that is wrong, and the choices behind it. */
export function PreviewPage({ draft, preview }: { draft: ImportState; preview: ImportPreview }) {
  const text = useText('import');
  const said = useImportSaid();
  const format = useFormat();
  const shutdownId = useShutdownId();
  const reading = useReading(draft);
  const [edited, setEdited] = useState<ImportChoices>();
  const [seen, setSeen] = useState(preview.previewId);
  // What was read has the choices in it.
  if (seen !== preview.previewId) {
    setSeen(preview.previewId);
    setEdited(undefined);
  }
  const choices = edited ?? withLastAnswers(preview);
  const unread = edited ? 'choices-changed' : choices === preview.choices ? null : 'answers-filled';
  const { counts } = preview;
  const props: ChoicesProps = { preview, choices, onChange: setEdited };
  return (
    <div className={styles.page}>
      <PageHeader
        title={text('preview-title', { count: counts.rows, rows: format.count(counts.rows), file: preview.fileName })}
        documentTitle={text('title')}
        over={<Link href={addresses.importRegister(shutdownId)}>{text('other-file')}</Link>}
        sub={text('nothing-recorded')}
      />
      <FigureRow>
        <Figure value={format.count(counts.new)} label={text('count-new')} />
        <Figure value={format.count(counts.changed)} label={text('count-changed')} />
        <Figure value={format.count(counts.same)} label={text('count-same')} />
        <Figure
          value={format.count(counts.error)}
          label={text('count-error')}
          tone={counts.error > 0 ? 'attention' : 'plain'}
        />
      </FigureRow>
      <QuestionsSection {...props} />
      {preview.stops.length > 0 && (
        <Notice kind="attention" title={text('before-import')}>
          <ul className={styles.plainList}>
            {preview.stops.map((stop) => (
              <li key={stop.code}>{said(stop)}</li>
            ))}
          </ul>
        </Notice>
      )}
      <PreviewTabs key={preview.previewId} preview={preview} />
      <NamedSection {...props} />
      <ColumnsSection {...props} draft={draft} />
      <ErrorNotice error={reading.error} />
      <ConfirmBar preview={preview} unread={unread} reading={reading} onReadAgain={() => reading.read(choices)} />
    </div>
  );
}

/** The preview's choices, and for what they leave open the answers of last time: the person looks and reads again. */
function withLastAnswers({ choices, questions }: ImportPreview): ImportChoices {
  const { answers } = choices.options;
  const last = questions.flatMap(({ key, lastAnswer }) =>
    lastAnswer === undefined || answers?.[key] !== undefined ? [] : [[key, lastAnswer] as const],
  );
  if (last.length === 0) return choices;
  return { ...choices, options: { ...choices.options, answers: { ...answers, ...Object.fromEntries(last) } } };
}
