import type { ReactNode } from 'react';
import { useText } from '../texts/text-provider.tsx';
import { classNames } from './class-names.ts';
import styles from './notice.module.css';
import { VisuallyHidden } from './visually-hidden.tsx';

export interface NoticeProps {
  /** attention: late or waiting; stop: danger only */
  readonly kind?: 'info' | 'attention' | 'stop';
  readonly title?: string | undefined;
  readonly children?: ReactNode;
  readonly actions?: ReactNode;
  /** it appeared because of something the person did: read it out at once */
  readonly live?: boolean;
}

/** Words that must not be missed, in the place they are about. */
export function Notice({ kind = 'info', title, children, actions, live = false }: NoticeProps) {
  const text = useText('ui');
  return (
    <section className={classNames(styles.notice, kind !== 'info' && styles[kind])} role={live ? 'alert' : undefined}>
      {title !== undefined && (
        <h3 className={styles.title}>
          {kind !== 'info' && <VisuallyHidden>{`${text(`notice-${kind}`)}: `}</VisuallyHidden>}
          {title}
        </h3>
      )}
      {children}
      {actions !== undefined && <div>{actions}</div>}
    </section>
  );
}
