import type { ImportDraft } from '@seatwell/contract';
import { useEffect, useRef, useState } from 'react';
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
import { usePreview } from './use-import.ts';

/** Which sheet holds the register; asked only where there is more than one. */
export function ChooseSheet({ draft }: { draft: ImportDraft }) {
  const text = useText('import');
  const shutdownId = useShutdownId();
  const preview = usePreview(draft.importId);
  const only = draft.sheets.length === 1 ? draft.sheets[0] : undefined;
  const [sheet, setSheet] = useState(only?.name ?? '');
  const begun = useRef(false);
  const { mutate } = preview;
  useEffect(() => {
    if (!only || begun.current) return;
    begun.current = true;
    mutate({ sheet: only.name });
  }, [only, mutate]);
  return (
    <div className={styles.narrow}>
      <PageHeader
        title={text(only ? 'reading' : 'which-sheet', { file: draft.fileName })}
        over={<Link href={addresses.importRegister(shutdownId)}>{text('other-file')}</Link>}
      />
      {only && preview.isPending && <p role="status">{text('reading-rows')}</p>}
      <ErrorNotice error={preview.error} />
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
                busy={preview.isPending}
                disabledReason={sheet === '' ? text('choose-sheet-first') : undefined}
                onClick={() => mutate({ sheet })}
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
