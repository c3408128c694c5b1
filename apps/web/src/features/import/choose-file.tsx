import { useState } from 'react';
import { addresses } from '../../app/addresses.ts';
import { ErrorNotice } from '../../app/error-notice.tsx';
import { useGo } from '../../app/use-go.ts';
import { useShutdownId } from '../../app/use-shutdown.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { FileDrop } from '../../ui/file-drop.tsx';
import { Link } from '../../ui/link.tsx';
import { PageHeader } from '../../ui/page-header.tsx';
import styles from './import.module.css';
import { importAddress } from './import-page.tsx';
import { sampleAddress, useUpload } from './use-import.ts';

const MOST_BYTES = 40_000_000;

/** The first step: the file, or a sample to begin from. */
export function ChooseFile() {
  const text = useText('import');
  const format = useFormat();
  const go = useGo();
  const shutdownId = useShutdownId();
  const upload = useUpload();
  const [file, setFile] = useState<File>();
  const take = (taken: File) => {
    setFile(taken);
    upload.mutate(taken, { onSuccess: ({ importId }) => go(importAddress(shutdownId, importId)) });
  };
  return (
    <div className={styles.narrow}>
      <PageHeader
        title={text('title')}
        over={<Link href={addresses.register(shutdownId)}>{text('register')}</Link>}
        sub={text('title-sub')}
      />
      <FileDrop
        label={text('file')}
        hint={text('file-hint', { limit: format.bytes(MOST_BYTES) })}
        accept=".csv,.txt,.tsv,.xlsx"
        mostBytes={MOST_BYTES}
        formatSize={format.bytes}
        file={file}
        onFile={take}
      />
      {upload.isPending && <p role="status">{text('reading-sheets')}</p>}
      <ErrorNotice error={upload.error} />
      <p className={styles.soft}>
        {text('sample-offer')}{' '}
        <a href={sampleAddress(shutdownId)} download="sample-register.csv">
          {text('sample')}
        </a>
      </p>
    </div>
  );
}
