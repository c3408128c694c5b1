import { useState } from 'react';
import { useFormat } from '../format/format-provider.tsx';
import { FileDrop } from '../ui/file-drop.tsx';
import { request } from './api-client.ts';
import { ErrorNotice } from './error-notice.tsx';

// As the server takes them.
const largestFile_bytes = 20 * 1024 * 1024;

interface Props {
  readonly label: string;
  readonly hint?: string;
  /** the stored file's hash, or null while there is none */
  readonly onStored: (hash: string | null) => void;
}

/** A certificate or photo, stored as soon as it is chosen and named by its hash. */
export function FileField({ label, hint, onStored }: Props) {
  const format = useFormat();
  const [file, setFile] = useState<File>();
  const [error, setError] = useState<unknown>();
  const take = async (taken: File) => {
    setFile(taken);
    setError(undefined);
    onStored(null);
    const body = new FormData();
    body.append('file', taken);
    try {
      const { hash } = await request<{ hash: string }>('/files', { method: 'POST', body });
      onStored(hash);
    } catch (failure) {
      setFile(undefined);
      setError(failure);
    }
  };
  return (
    <>
      <FileDrop
        label={label}
        {...(hint === undefined ? {} : { hint })}
        accept=".pdf,.jpg,.jpeg,.png,.webp"
        mostBytes={largestFile_bytes}
        formatSize={format.bytes}
        file={file}
        onFile={(taken) => void take(taken)}
      />
      <ErrorNotice error={error} />
    </>
  );
}

/** Where a stored file can be read. */
export const fileAddress = (hash: string): string => `/api/v1/files/${hash}`;
