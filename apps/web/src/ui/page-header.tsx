import type { ReactNode } from 'react';
import styles from './page-header.module.css';
import { useDocumentTitle } from './use-document-title.ts';

export interface PageHeaderProps {
  /** the answer that the page gives, as a sentence where there is one */
  readonly title: string;
  /** where we are: a link back, a path */
  readonly over?: ReactNode;
  readonly sub?: ReactNode;
  readonly actions?: ReactNode;
  /** title of the browser's tab, when the sentence is too long for it */
  readonly documentTitle?: string;
}

/** The head of every page: one title that says what the page answers. */
export function PageHeader({ title, over, sub, actions, documentTitle }: PageHeaderProps) {
  useDocumentTitle(documentTitle ?? title);
  return (
    <header className={styles.header}>
      <div className={styles.words}>
        {over !== undefined && <div className={styles.over}>{over}</div>}
        <h1>{title}</h1>
        {sub !== undefined && <p className={styles.sub}>{sub}</p>}
      </div>
      {actions !== undefined && <div className={styles.actions}>{actions}</div>}
    </header>
  );
}
