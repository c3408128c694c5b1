import type { ReactNode } from 'react';
import styles from './legend.module.css';

interface Entry {
  readonly name: string;
  /** how the drawing shows it */
  readonly swatch: ReactNode;
}

/** What the colours and marks of a drawing stand for. */
export function Legend({ entries }: { entries: readonly Entry[] }) {
  return (
    <p className={styles.legend} aria-hidden="true">
      {entries.map(({ name, swatch }) => (
        <span key={name} className={styles.key}>
          {swatch}
          {name}
        </span>
      ))}
    </p>
  );
}
