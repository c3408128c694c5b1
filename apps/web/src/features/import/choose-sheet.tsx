import type { ImportState } from '@seatwell/contract';
import { useEffect, useState } from 'react';
import { addresses } from '../../app/addresses.ts';
import { ErrorNotice } from '../../app/error-notice.tsx';
import { useShutdownId } from '../../app/use-shutdown.ts';
import { useText } from '../../texts/text-provider.tsx';
import { Button } from '../../ui/button.tsx';
import { Link } from '../../ui/link.tsx';
import { PageHeader } from '../../ui/page-header.tsx';
import { RadioCards } from '../../ui/radio-cards.tsx';
import { StickyActionBar } from '../../ui/sticky-action-bar.tsx';
import styles from './import.module.css';
import { ReadingProgress } from './reading-progress.tsx';
import { useReading } from './use-reading.ts';

/** Which sheet holds the register; asked only where there is more than one. */
export function ChooseSheet({ draft }: { draft: ImportState }) {
  const text = useText('import');
  const shutdownId = useShutdownId();
  const reading = useReading(draft);
  const only = draft.sheets.length === 1 ? draft.sheets[0] : undefined;
  const [sheet, setSheet] = useState(only?.name ?? '');
  const [begun, setBegun] = useState(false);
  const { read, underWay } = reading;
  useEffect(() => {
    if (!only || begun) return;
    setBegun(true);
    if (!underWay) read({ sheet: only.name });
  }, [only, begun, read, underWay]);
  return (
    <div className={styles.narrow}>
      <PageHeader
        title={text(only ? 'reading' : 'which-sheet', { file: draft.fileName })}
        over={<Link href={addresses.importRegister(shutdownId)}>{text('other-file')}</Link>}
      />
      {underWay && (
        <>
          <p role="status">{text('reading-rows')}</p>
          <ReadingProgress reading={reading} fileName={draft.fileName} />
        </>
      )}
      <ErrorNotice error={reading.error} />
      {only && begun && !underWay && <Button onClick={() => read({ sheet: only.name })}>{text('read-again')}</Button>}
      {!only && (
        <>
          <RadioCards
            label={text('sheet')}
            value={sheet}
            onChange={setSheet}
            options={draft.sheets.map(({ name, hidden }) => ({
              value: name,
              label: name,
              ...(hidden ? { detail: text('hidden-sheet') } : {}),
            }))}
          />
          <StickyActionBar
            actions={
              <Button
                kind="primary"
                busy={underWay}
                disabledReason={sheet === '' ? text('choose-sheet-first') : undefined}
                onClick={() => read({ sheet })}
              >
                {text('read-sheet')}
              </Button>
            }
          />
        </>
      )}
    </div>
  );
}
