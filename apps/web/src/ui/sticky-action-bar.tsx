import type { ReactNode } from 'react';
import styles from './sticky-action-bar.module.css';

/** What can be done now, at the foot of the page and at the thumb: words first, the primary action last. */
export function StickyActionBar({ children, actions }: { children?: ReactNode; actions: ReactNode }) {
  return (
    <div className={styles.bar} data-action-bar="">
      <div>{children}</div>
      <div className={styles.actions}>{actions}</div>
    </div>
  );
}
