import type { ReactNode } from 'react';
import styles from './more-inputs.module.css';

interface Props {
  readonly summary: string;
  /** shown from the start, where one of them is entered */
  readonly open?: boolean | undefined;
  readonly children: ReactNode;
}

/** Inputs that most do without, behind one line. */
export function MoreInputs({ summary, open, children }: Props) {
  return (
    <details open={open}>
      <summary className={styles.summary}>{summary}</summary>
      <div className={styles.more}>{children}</div>
    </details>
  );
}
