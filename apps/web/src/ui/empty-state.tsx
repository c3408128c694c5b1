import type { ReactNode } from 'react';
import styles from './states.module.css';

/** Nothing here yet: says why, and offers the way on. */
export function EmptyState(props: { title: string; children?: ReactNode; actions?: ReactNode }) {
  return (
    <div className={styles.empty}>
      <h2 className={styles.title}>{props.title}</h2>
      {props.children}
      {props.actions !== undefined && <div className={styles.actions}>{props.actions}</div>}
    </div>
  );
}
