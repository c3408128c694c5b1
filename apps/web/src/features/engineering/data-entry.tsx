import type { ReactNode } from 'react';
import { ErrorNotice } from '../../app/error-notice.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { Button } from '../../ui/button.tsx';
import { FieldGroup } from '../../ui/field-group.tsx';
import styles from './engineering.module.css';

interface Props {
  readonly legend: string;
  readonly entering: { readonly isPending: boolean; readonly error: unknown };
  /** why this person may not enter it */
  readonly against: string | undefined;
  /** every field is filled in, the source too */
  readonly complete: boolean;
  readonly onEnter: () => void;
  readonly children: ReactNode;
}

/** What an engineer enters into the site's data: its fields, and the button that waits for a source. */
export function DataEntry({ legend, entering, against, complete, onEnter, children }: Props) {
  const text = useText('engineering');
  return (
    <FieldGroup legend={legend}>
      <div className={styles.pair}>{children}</div>
      <ErrorNotice error={entering.error} />
      <span>
        <Button
          kind="primary"
          busy={entering.isPending}
          disabledReason={against ?? (complete ? undefined : text('all-with-source'))}
          onClick={onEnter}
        >
          {text('enter')}
        </Button>
      </span>
    </FieldGroup>
  );
}
