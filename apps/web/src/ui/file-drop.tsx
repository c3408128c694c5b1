import { type DragEvent, useId, useState } from 'react';
import { useText } from '../texts/text-provider.tsx';
import styles from './file-drop.module.css';

export interface FileDropProps {
  readonly label: string;
  readonly hint?: string;
  /** file name endings, for example ".csv,.xlsx" */
  readonly accept: string;
  readonly mostBytes: number;
  /** formats a file's size */
  readonly formatSize: (bytes: number) => string;
  readonly file: File | undefined;
  readonly onFile: (file: File) => void;
}

/** Takes one file by choosing or dropping; says at once why one is refused. */
export function FileDrop(props: FileDropProps) {
  const { label, hint, accept, mostBytes, formatSize, file, onFile } = props;
  const text = useText('ui');
  const id = useId();
  const [over, setOver] = useState(false);
  const [error, setError] = useState<string>();

  const take = (taken: File | undefined) => {
    if (!taken) return;
    const endings = accept.split(',').map((ending) => ending.trim().toLowerCase());
    if (!endings.some((ending) => taken.name.toLowerCase().endsWith(ending))) {
      setError(text('file-wrong-kind', { name: taken.name, accept: endings.join(' ') }));
    } else if (taken.size > mostBytes) {
      const sizes = { size: formatSize(taken.size), limit: formatSize(mostBytes) };
      setError(text('file-too-large', { name: taken.name, ...sizes }));
    } else {
      setError(undefined);
      onFile(taken);
    }
  };
  const drop = (event: DragEvent) => {
    event.preventDefault();
    setOver(false);
    take(event.dataTransfer.files[0]);
  };

  return (
    <label
      className={styles.drop}
      data-over={over ? '' : undefined}
      onDragOver={(event) => {
        event.preventDefault();
        setOver(true);
      }}
      onDragLeave={() => setOver(false)}
      onDrop={drop}
    >
      <strong>{label}</strong>
      <input
        type="file"
        className={styles.input}
        accept={accept}
        aria-describedby={`${id}-hint ${id}-state`}
        onChange={(event) => {
          take(event.target.files?.[0]);
          event.target.value = '';
        }}
      />
      <span>
        <span className={styles.act}>{text('choose-file')}</span> {text('drop-file')}
      </span>
      {hint !== undefined && (
        <span id={`${id}-hint`} className={styles.soft}>
          {hint}
        </span>
      )}
      <span id={`${id}-state`} role="status">
        {error !== undefined && <span className={styles.error}>{error}</span>}
        {error === undefined && file && text('file-chosen', { name: file.name, size: formatSize(file.size) })}
      </span>
    </label>
  );
}
