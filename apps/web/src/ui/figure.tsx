import type { ReactNode } from 'react';
import { classNames } from './class-names.ts';
import styles from './figure.module.css';
import { Link } from './link.tsx';

export interface FigureProps {
  /** formatted number */
  readonly value: string;
  readonly unit?: string;
  readonly label: string;
  /** where the rows behind the figure are */
  readonly href?: string;
  readonly tone?: 'plain' | 'attention' | 'stop';
}

/** A number that answers a question, and leads to what it counts. */
export function Figure({ value, unit, label, href, tone = 'plain' }: FigureProps) {
  const content = (
    <>
      <span className={classNames(styles.value, tone !== 'plain' && styles[tone])}>
        {value}
        {unit !== undefined && <span className={styles.unit}> {unit}</span>}
      </span>{' '}
      <span className={styles.label}>{label}</span>
    </>
  );
  if (href === undefined) return <div className={styles.figure}>{content}</div>;
  return (
    <Link href={href} className={styles.figure}>
      {content}
    </Link>
  );
}

/** Figures side by side. */
export function FigureRow({ children }: { children: ReactNode }) {
  return <div className={styles.row}>{children}</div>;
}
