import type { ReactNode } from 'react';
import { useText } from '../texts/text-provider.tsx';
import styles from './notice.module.css';
import { Notice } from './notice.tsx';

/** One thing that is wrong: what is missing, why it matters, what to do, who can clear it. */
export interface ProblemItem {
  readonly code?: string | undefined;
  readonly path?: string | undefined;
  readonly message: string;
  readonly remedy?: string | undefined;
  readonly who?: string | undefined;
}

/** problem+json (RFC 9457) as our API answers it. */
export interface ProblemDetails {
  readonly title: string;
  readonly detail?: string | undefined;
  readonly errors?: readonly ProblemItem[] | undefined;
}

/** Shows a refusal of the server: all that is wrong at once, each with its remedy. */
export function Problem({ problem, actions }: { problem: ProblemDetails; actions?: ReactNode }) {
  const text = useText('ui');
  const errors = problem.errors ?? [];
  return (
    <Notice kind="stop" title={problem.title} live actions={actions}>
      {problem.detail !== undefined && <p>{problem.detail}</p>}
      {errors.length > 0 && (
        <ul className={styles.list}>
          {errors.map((error) => (
            <li key={`${error.code} ${error.path} ${error.message}`}>
              <span>{error.message}</span>
              {error.remedy !== undefined && <span>{error.remedy}</span>}
              {error.who !== undefined && <span className={styles.soft}>{text('remedy-by', { who: error.who })}</span>}
            </li>
          ))}
        </ul>
      )}
    </Notice>
  );
}
